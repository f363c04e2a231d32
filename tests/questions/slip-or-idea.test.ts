/** When a wrong answer speaks for a wrong idea: the odds, against cases worked out by hand in docs/misconceptions.md. */
import { describe, expect, it } from 'vitest';
import { MUCH_LIKELIER, oddsOfIdea } from '../../src/questions/slip-or-idea.ts';

const parts = (right: number, wrong: number, choices: number, item = '-H1') => [
  ...Array.from({ length: right }, () => ({ item, correct: true, choices })),
  ...Array.from({ length: wrong }, () => ({ item, correct: false, choices })),
];

describe('the odds of an idea against a slip', () => {
  it('are even with one lamp wrong of however many', () => {
    // By hand, three lamps: idea 0.05 x 0.95 x 0.95 x 0.95, slip 0.95 x 0.95 x 0.95 x 0.05.
    for (const right of [0, 1, 2, 7]) expect(oddsOfIdea(parts(right, 1, 2))).toBeCloseTo(1, 10);
    expect(oddsOfIdea(parts(2, 1, 2))).toBeLessThan(MUCH_LIKELIER);
  });

  it('are nineteen to one with two lamps wrong', () => {
    // By hand: one slip more is 0.95 / 0.05 = 19 times less likely.
    expect(oddsOfIdea(parts(1, 2, 2))).toBeCloseTo(19, 10);
    expect(oddsOfIdea(parts(1, 2, 2))).toBeGreaterThan(MUCH_LIKELIER);
  });

  it('grow with the answers that a slip could have fallen on', () => {
    // One of three wrong wirings is given by a slip only every third time, one of seven every seventh.
    expect(oddsOfIdea(parts(0, 1, 4, 'choice'))).toBe(MUCH_LIKELIER);
    expect(oddsOfIdea(parts(0, 1, 3, 'choice'))).toBe(2);
    expect(oddsOfIdea(parts(0, 1, 8, 'choice'))).toBe(7);
    // A reading: five that people come to who slip.
    expect(oddsOfIdea(parts(0, 1, 0, 'volts'))).toBe(5);
    // A lamp that could also flash: who slips says lit for dark.
    expect(oddsOfIdea(parts(2, 1, 4))).toBe(1);
  });
});
