import { describe, expect, it } from 'vitest';
import type { SceneSheet, Width } from '../../src/drawing/index.ts';
import { families, free, randomOf } from '../../src/generator/index.ts';
import { ownBank } from '../support/own-bank.ts';
import { expectSoundEverywhere, WIDTHS } from './geometry-check.ts';

const EACH = 80;
const FREE = 320;

/** Drafts as they come: also those that make no good question have to be drawn right. */
const draft = (family: (typeof families)[number], seed: number) => {
  const { min, max } = family.size;
  const size = min + (seed % (max - min + 1));
  return family.draft(randomOf(`drawn ${family.id} ${seed}`), { size }).circuit;
};

/** Whether a sheet is shown or printed as it is, in pixels or quarters of a millimetre: larger, its letters would shrink. */
const fits = (width: Width, sheet: SceneSheet): boolean => {
  switch (width) {
    case 'phone':
      return sheet.width === 360;
    case 'screen':
      return sheet.width <= 1000;
    case 'a4':
      return [sheet.width, sheet.height].sort((a, b) => a - b).join() === '840,1188';
  }
};

function drawn(family: (typeof families)[number], count: number): void {
  for (let seed = 0; seed < count; seed++) {
    const scenes = expectSoundEverywhere(draft(family, seed), `${family.id} ${seed}`);
    scenes.forEach(({ sheets }, index) => {
      const width = WIDTHS[index] ?? 'phone';
      const unfit = sheets.filter((sheet) => !fits(width, sheet)).map((sheet) => [sheet.width, sheet.height]);
      expect(unfit, `${family.id} ${seed} for ${width}`).toEqual([]);
    });
  }
}

describe('a drawing read back is the circuit, is signed, and has room at all three widths', () => {
  it.each(families.map((family) => [family.id, family] as const))(
    `for ${EACH} circuits of %s`,
    (_, family) => {
      drawn(family, EACH);
    },
  );

  it(`for ${FREE} free circuits`, () => {
    drawn(free, FREE);
  });

  it('for every circuit that is written in the banks', () => {
    let circuits = 0;
    for (const topic of ownBank().topics)
      for (const { id, circuit } of [
        ...topic.circuits,
        ...topic.questions.map(({ id, question }) => ({ id, circuit: question.circuit })),
      ]) {
        expectSoundEverywhere(circuit, `${topic.id} ${id}`);
        circuits += 1;
      }
    expect(circuits).toBeGreaterThan(40);
  });
});
