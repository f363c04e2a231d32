/** The correction for guessing against published treatments; each names its source. */
import { expect, it } from 'vitest';
import { shareOf } from '../../src/questions/index.ts';
import type { Part } from '../../src/questions/kind.ts';

const part = (correct: boolean, choices: number): Part => ({
  item: 'x',
  given: { says: correct ? 'lit' : 'dark' },
  right: { says: 'lit' },
  correct,
  choices,
});
const parts = (right: number, wrong: number, left: number, choices: number): Part[] => [
  ...Array.from({ length: right }, () => part(true, choices)),
  ...Array.from({ length: wrong }, () => part(false, choices)),
  ...Array.from({ length: left }, () => {
    const { given: _, ...blank } = part(false, choices);
    return blank;
  }),
];

/**
 * Scoring instructions of a practice book for a graduate admissions test in chemistry, as passed on in a stored page
 * (coursehero.com, file 6412639): five choices; with 80 right and 46 wrong, "46 by 4 yields 11.5", and "68.5".
 */
it('is as in the worked example of an answer sheet with five choices, some left out', () => {
  expect(126 * shareOf(parts(80, 46, 0, 5))).toBeCloseTo(68.5, 9);
  expect(150 * shareOf(parts(80, 46, 24, 5))).toBeCloseTo(68.5, 9);
});

/**
 * R - W/(k - 1), "where R is the number of right answers, W is the number of wrong answers, and k is the number of choices"
 * ("An unpublished statistics book", stored page info.5y1.org); the same formula as in Frary 1988, "Formula scoring of
 * multiple-choice tests (correction for guessing)", of which only the summary was found.
 */
it.each([
  [10, 0, 2],
  [7, 3, 2],
  [7, 3, 4],
  [12, 4, 5],
])('is R - W/(k - 1) over all: %d right, %d wrong, of %d choices', (right, wrong, choices) => {
  expect((right + wrong) * shareOf(parts(right, wrong, 0, choices))).toBeCloseTo(
    right - wrong / (choices - 1),
    9,
  );
});

/** "Those who blindly guess among all choices are not penalized on average" (Frary 1988, summary). */
it('gives somebody who guesses nothing on average, before the whole is held at 0', () => {
  for (const choices of [2, 3, 5]) {
    // One right guess in `choices`, in each of so many questions of one part.
    const shares = [1, ...Array.from({ length: choices - 1 }, () => -1 / (choices - 1))];
    const guessed = Array.from({ length: choices }, (_, at) =>
      shareOf(parts(at === 0 ? 1 : 0, at === 0 ? 0 : 1, 0, choices)),
    );
    expect(guessed).toEqual(shares.map((share) => Math.max(0, share)));
    // Beside enough that is right nothing is held at 0: a whole row of guesses adds nothing.
    const beside = parts(10, 0, 0, choices);
    expect((10 + choices) * shareOf([...beside, ...parts(1, choices - 1, 0, choices)])).toBeCloseTo(10, 9);
  }
});
