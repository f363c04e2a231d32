/** How large letters come out on the phone and on paper, read from the finished SVG: its size, its view box and its styles. */
import { describe, expect, it } from 'vitest';
import { drawSvgs, PROFILES, type SvgOptions, type Width } from '../../src/drawing/index.ts';
import { families, free, randomOf } from '../../src/generator/index.ts';
import { layOut } from '../support/in-english.ts';
import { galleryCircuit } from './gallery-circuits.ts';

interface Letters {
  readonly text: string;
  /** Height of the em in the unit that the SVG's own width is given in. */
  readonly size: number;
}

const numberIn = (svg: string, pattern: RegExp): number => Number(pattern.exec(svg)?.[1]);

/** Every text of an SVG in its real size. */
function lettersOf(svg: string): Letters[] {
  const scale = numberIn(svg, /<svg [^>]*?width="([\d.]+)/) / numberIn(svg, /viewBox="0 0 ([\d.]+)/);
  const style = /<style>(.*?)<\/style>/.exec(svg)?.[1] ?? '';
  const usual = numberIn(style, /text\{[^}]*font-size:([\d.]+)px/);
  const ofClass = new Map(
    [...style.matchAll(/\.(\w)\{[^}]*?font-size:([\d.]+)px/g)].map(([, name, size]) => [name, Number(size)]),
  );
  return [...svg.matchAll(/<text([^>]*)>([^<]*)</g)].map(([, attributes = '', text = '']) => {
    const own = numberIn(attributes, /style="font-size:([\d.]+)px"/);
    const size = Number.isNaN(own) ? (ofClass.get(/class="(\w)"/.exec(attributes)?.[1] ?? '') ?? usual) : own;
    return { text, size: size * scale };
  });
}

/** Capitals and figures are 0.718 of the em high in Helvetica, 0.716 in Arial (their published font metrics, from memory). */
const CAPITALS = 0.716;

function smallest(width: Width, options: SvgOptions): { readonly unit: string; readonly letters: Letters } {
  const circuits = [
    ...[...families, free].map(
      (family) => family.draft(randomOf('letters'), { size: family.size.max }).circuit,
    ),
    galleryCircuit('ramp-hoist'),
  ];
  const svgs = circuits.flatMap((circuit) => drawSvgs(layOut(circuit, PROFILES[width]), options));
  const all = svgs.flatMap(lettersOf);
  expect(all.length).toBeGreaterThan(1000);
  const units = new Set(svgs.map((svg) => /<svg [^>]*?width="[\d.]+([a-z]*)"/.exec(svg)?.[1]));
  expect(units.size).toBe(1);
  return {
    unit: [...units][0] ?? '',
    letters: all.reduce((least, one) => (one.size < least.size ? one : least)),
  };
}

describe('letters, terminal numbers among them', () => {
  it('are at least 11 px high on a phone of 360 px, in the largest circuit of every family', () => {
    const { unit, letters } = smallest('phone', {});
    expect(unit).toBe('');
    expect(letters.size, letters.text).toBeGreaterThanOrEqual(11);
  });

  it('have capitals and figures at least 2 mm high on A4', () => {
    const { unit, letters } = smallest('a4', { millimetres: 0.25 });
    expect(unit).toBe('mm');
    expect(letters.size * CAPITALS, letters.text).toBeGreaterThanOrEqual(2);
  });
});
