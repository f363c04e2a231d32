import { describe, expect, it } from 'vitest';
import type { Circuit } from '../../shared/circuit.ts';
import { drawSvgs, PALETTES, PROFILES } from '../../src/drawing/index.ts';
import { LETTER_SIZE } from '../../src/drawing/layout/lettering.ts';
import { twelveRelays } from '../bench/drawing-circuits.ts';
import { layOut } from '../support/in-english.ts';
import { galleryCircuit } from './gallery-circuits.ts';
import { diceOf, randomCircuit } from './random-circuit.ts';
import { wellFormed } from './well-formed.ts';

const hostile = (text: string): Circuit => ({
  ...galleryCircuit('vent-fan'),
  title: text,
  devices: galleryCircuit('vent-fan').devices.map((device) => ({ ...device, text })),
});

describe('a drawing as SVG', () => {
  it('is well-formed, carries no script and refers to nothing outside', () => {
    for (let seed = 0; seed < 150; seed++) {
      const circuit = randomCircuit(diceOf(seed), { paths: 6, sheets: 2, odd: 0.2 });
      for (const svg of drawSvgs(layOut(circuit, PROFILES.screen), { theme: seed % 2 ? 'dark' : 'light' })) {
        expect(wellFormed(svg), `seed ${seed}`).toEqual([]);
        expect(svg).not.toMatch(/<script|<foreignObject|\son\w+=|href|url\(|@import|javascript:/i);
      }
    }
  });

  it.each([
    '<script>alert(1)</script>',
    '"><image href="x" onerror="y"/>',
    ']]> & &amp; < > \' "',
    'control \u0000\u0008\ufffe characters \ud800',
    '漢字 Größe ☃',
  ])('writes %j as letters and nothing else', (text) => {
    for (const svg of drawSvgs(layOut(hostile(text), PROFILES.a4), { label: text })) {
      expect(wellFormed(svg)).toEqual([]);
      for (const wrong of ['<script', '<image', '\u0000', '\u0008', '\ufffe'])
        expect(svg).not.toContain(wrong);
    }
  });

  it('keeps a drawing of 12 relays and 40 contacts below 40 kB at each width', () => {
    for (const width of ['phone', 'screen', 'a4'] as const) {
      const svgs = drawSvgs(layOut(twelveRelays(), PROFILES[width]));
      expect(
        svgs.reduce((sum, svg) => sum + Buffer.byteLength(svg), 0),
        width,
      ).toBeLessThanOrEqual(40_000);
    }
  });

  it('names the part of each symbol and the conductor of each line, so that a page can find them', () => {
    const scene = layOut(galleryCircuit('vent-fan'), PROFILES.phone);
    const [svg = ''] = drawSvgs(scene);
    for (const { id } of scene.sheets.flatMap((sheet) => sheet.symbols))
      expect(svg).toContain(`data-part="${id}"`);
    const net = scene.conductors.findIndex((terminals) => terminals.includes('-F1:2'));
    expect(svg).toContain(`data-net="${net}"`);
  });

  it('takes the colours of whoever shows it', () => {
    const palette = { ...PALETTES.light, ink: 'var(--ink)', paper: 'var(--paper)' };
    const [svg = ''] = drawSvgs(layOut(galleryCircuit('vent-fan'), PROFILES.phone), { palette });
    expect(svg).toContain('stroke:var(--ink)');
    expect(svg).toContain('fill="var(--paper)"');
    expect(svg).not.toContain(PALETTES.light.ink);
  });
});

describe('legibility', () => {
  it('writes terminal numbers at least 11 px high on a phone of 360 px, and no text smaller', () => {
    const [sheet] = layOut(galleryCircuit('ramp-hoist'), PROFILES.phone).sheets;
    expect(sheet?.width).toBe(360);
    for (const size of Object.values(LETTER_SIZE)) expect(size).toBeGreaterThanOrEqual(11);
  });

  it('writes capitals and figures at least 2 mm high on A4 (0.718 of the em in Helvetica, a unit being 0.25 mm)', () => {
    const scene = layOut(galleryCircuit('ramp-hoist'), PROFILES.a4);
    expect(scene.sheets.map(({ width, height }) => [width / 4, height / 4])).toEqual([[297, 210]]);
    for (const size of Object.values(LETTER_SIZE)) expect(size * 0.718 * 0.25).toBeGreaterThanOrEqual(2);
    const [svg = ''] = drawSvgs(scene, { millimetres: 0.25 });
    expect(svg).toContain('width="297mm" height="210mm"');
  });

  it('fits the phone with circuits of up to 8 paths drawn in the usual direction', () => {
    for (let seed = 1; seed < 600; seed += 2) {
      const circuit = randomCircuit(diceOf(seed), { paths: 1 + (seed % 8), sheets: 1, odd: 0 });
      for (const sheet of layOut(circuit, PROFILES.phone).sheets)
        expect(sheet.width, `seed ${seed}`).toBeLessThanOrEqual(360);
    }
  });
});
