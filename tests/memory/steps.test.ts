/** The formulas taken apart for planning are the library's (ts-fsrs, FSRS-6), to the last digit. */
import * as fc from 'fast-check';
import { expect, it } from 'vitest';
import { chanceAfter, LEAST_STABILITY, MOST_STABILITY, memoryAfter } from '../../src/memory/model.ts';
import {
  chanceOf,
  difficultyAfterLapse,
  difficultyKept,
  fallOf,
  growthOf,
  keptStability,
  lapsedStability,
} from '../../src/memory/steps.ts';

/** Stabilities from minutes to a century, as many small as large ones. */
const stability = fc
  .double({ min: Math.log(LEAST_STABILITY), max: Math.log(MOST_STABILITY), noNaN: true })
  .map((logarithm) => Math.min(Math.max(Math.exp(logarithm), LEAST_STABILITY), MOST_STABILITY));
const difficulty = fc.double({ min: 1, max: 10, noNaN: true });
const days = fc.oneof(fc.constant(0), fc.nat(400), fc.double({ min: 0, max: 4000, noNaN: true }));

it('gives the chance, and the memory after a firm answer and after a lapse, that the library gives', () =>
  fc.assert(
    fc.property(stability, difficulty, days, (stability, difficulty, days) => {
      const memory = { stability, difficulty };
      const chance = chanceOf(days, stability);
      expect(chance).toBe(chanceAfter(days, stability));
      expect({
        stability: keptStability(stability, growthOf(stability, difficulty), chance),
        difficulty: difficultyKept(difficulty),
      }).toEqual(memoryAfter(memory, days, 'firm'));
      expect({
        stability: lapsedStability(stability, fallOf(stability, difficulty), chance),
        difficulty: difficultyAfterLapse(difficulty),
      }).toEqual(memoryAfter(memory, days, 'lost'));
    }),
    { numRuns: 20_000 },
  ));
