/** How drawings are made. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { PROFILES } from '../../src/drawing/index.ts';
import { galleryCircuit } from '../drawing/gallery-circuits.ts';
import { layOut } from '../support/in-english.ts';

const sceneOf = (name: Parameters<typeof galleryCircuit>[0]) => layOut(galleryCircuit(name), PROFILES.screen);

describe('a drawing', () => {
  it('joins the poles that one device moves by a dashed line', () => {
    const [sheet] = sceneOf('ramp-hoist').sheets;
    expect(new Set(sheet?.links.map(({ mechanism }) => mechanism))).toEqual(
      new Set(['-Q1', '-K1', '-K2', '-F2']),
    );
  });

  it('draws a pole of which one leg is wired as the make or break it then is', () => {
    const symbols = sceneOf('mist-line').sheets.flatMap((sheet) => sheet.symbols);
    expect(symbols.find(({ id }) => id === '-K1:11')?.form).toBe('make');
    expect(symbols.find(({ id }) => id === '-K1:31')?.form).toBe('changeover');
  });
});
