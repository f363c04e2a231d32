/** What a drawing costs: layout and SVG of a usual circuit, a whole panel, and a long PDF. */
import { performance } from 'node:perf_hooks';
import { drawSvg, drawSvgs, PROFILES, picturesOf } from '../../src/drawing/index.ts';
import { drawPdf } from '../../src/drawing/pdf/draw-pdf.ts';
import { layOut } from '../support/in-english.ts';
import { relayPanel, twelveRelays } from './drawing-circuits.ts';
import { median, type Row } from './row.ts';

/** Median of a batch, of the quietest of five batches: what else the machine does is not the drawing's. */
const timed = (rounds: number, work: () => void): number => {
  for (let warm = 0; warm < rounds; warm++) work();
  const batches = Array.from({ length: 5 }, () =>
    median(
      Array.from({ length: Math.ceil(rounds / 5) }, () => {
        const from = performance.now();
        work();
        return performance.now() - from;
      }),
    ),
  );
  return Math.min(...batches);
};

export async function bench(): Promise<Row[]> {
  const twelve = twelveRelays();
  const panel = relayPanel(200, 12);
  const svg = drawSvgs(layOut(twelve, PROFILES.screen)).join('');
  const scene = layOut(relayPanel(240, 8), PROFILES.a4);
  const { picture } = picturesOf(scene);
  const pages = Array.from({ length: 30 }, (_, at) => picture(at % scene.sheets.length));
  const from = performance.now();
  await drawPdf(pages, { title: 'Thirty sheets', language: 'en', made: new Date(0) });
  const pdf = performance.now() - from;
  return [
    {
      name: 'layout and SVG of a 12-relay circuit',
      value: timed(1000, () => drawSvg(layOut(twelve, PROFILES.screen), 0)),
      unit: 'ms',
      bound: 2,
      better: 'less',
    },
    {
      name: 'its SVG, before compression',
      value: Buffer.byteLength(svg) / 1000,
      unit: 'kB',
      bound: 40,
      better: 'less',
    },
    {
      name: 'a 200-relay panel on many sheets',
      value: timed(10, () => drawSvgs(layOut(panel, PROFILES.screen))),
      unit: 'ms',
      bound: 1000,
      better: 'less',
    },
    { name: 'a PDF of 30 A4 pages', value: pdf, unit: 'ms', bound: 3000, better: 'less' },
  ];
}
