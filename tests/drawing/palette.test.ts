/** The colours against WCAG 2.2's contrasts and against published simulations of colour vision deficiencies. */
import { describe, expect, it } from 'vitest';
import { PALETTES, type Theme } from '../../src/drawing/index.ts';
import { INKS } from '../../src/drawing/picture/inks.ts';

type Rgb = readonly [number, number, number];

const linear = (hex: string): Rgb =>
  [1, 3, 5].map((at) => {
    const value = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  }) as unknown as Rgb;

const luminance = ([r, g, b]: Rgb): number => 0.2126 * r + 0.7152 * g + 0.0722 * b;

/** WCAG 2.2, relative luminance and contrast ratio (from memory). */
function contrast(one: string, other: string): number {
  const [a, b] = [luminance(linear(one)), luminance(linear(other))];
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
}

/** Machado, Oliveira, Fernandes 2009, severity 1, on linear values (from memory). */
const DEFICIENCIES = {
  protanopia: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deuteranopia: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  tritanopia: [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
  none: [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
} as const;

/** CIE L*a*b* under D65. */
function lab(rgb: Rgb): Rgb {
  const [r, g, b] = rgb.map((value) => Math.min(1, Math.max(0, value))) as unknown as Rgb;
  const f = (t: number): number => (t > 0.008856 ? Math.cbrt(t) : 7.787 * t + 16 / 116);
  const x = f((0.4124 * r + 0.3576 * g + 0.1805 * b) / 0.9505);
  const y = f(0.2126 * r + 0.7152 * g + 0.0722 * b);
  const z = f((0.0193 * r + 0.1192 * g + 0.9505 * b) / 1.089);
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

function seen(hex: string, matrix: readonly (readonly number[])[]): Rgb {
  const rgb = linear(hex);
  return lab(
    matrix.map((row) =>
      row.reduce((sum, factor, at) => sum + factor * (rgb[at] as number), 0),
    ) as unknown as Rgb,
  );
}

const THEMES = Object.entries(PALETTES) as [Theme, (typeof PALETTES)[Theme]][];

describe.each(THEMES)('the %s palette', (_, palette) => {
  it('has text at 4.5 to 1 and lines at 3 to 1 on its paper', () => {
    for (const text of [palette.ink, palette.quiet])
      expect(contrast(text, palette.paper)).toBeGreaterThanOrEqual(4.5);
    for (const line of [palette.live, palette.stop, palette.fed, palette.frame])
      expect(contrast(line, palette.paper)).toBeGreaterThanOrEqual(3);
    // The letters and crosses in what is lit; what has a voltage on the broad line under the path picked out.
    expect(contrast(palette.onLit, palette.lit)).toBeGreaterThanOrEqual(4.5);
    for (const line of [palette.live, palette.fed])
      expect(contrast(line, palette.halo)).toBeGreaterThanOrEqual(3);
  });

  it.each(Object.entries(DEFICIENCIES))('keeps ink, live, stop and lit apart with %s', (name, matrix) => {
    const inks = {
      ink: palette.ink,
      live: palette.live,
      stop: palette.stop,
      lit: palette.lit,
      paper: palette.paper,
    };
    const pairs = Object.entries(inks).flatMap(([a, one], at) =>
      Object.entries(inks)
        .slice(at + 1)
        .map(([b, other]) => [`${a} and ${b}`, seen(one, matrix), seen(other, matrix)] as const),
    );
    // A difference of 10 is plain to see side by side (common practice, no source).
    for (const [pair, one, other] of pairs)
      expect(
        Math.hypot(...one.map((value, at) => value - (other[at] as number))),
        `${pair}, ${name}`,
      ).toBeGreaterThan(15);
  });
});

describe('without any colour', () => {
  it('an energised conductor is nearly twice as heavy, a picked out path broader still, and a stop has its own shape', () => {
    expect((INKS.live.width ?? 0) / (INKS.wire.width ?? 1)).toBeGreaterThan(1.8);
    expect((INKS.fed.width ?? 0) / (INKS.live.width ?? 1)).toBeGreaterThan(2);
    expect(INKS['stop-bar'].stroke).toBe('stop');
  });
});
