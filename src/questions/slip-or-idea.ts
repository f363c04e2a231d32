/**
 * Whether a wrong answer speaks for a wrong idea, or may as well be a slip. Three ways to it are weighed: somebody with an idea
 * answers each part as the idea has it, but for a slip now and then; somebody without answers each part rightly, but for a
 * slip. docs/misconceptions.md works it out by hand.
 */
import type { Part } from './kind.ts';

/** Chances, all three common practice, no source: to slip in one part; to hold just this idea; to answer a part as the idea has it. */
const SLIPS = 0.05;
const HOLDS = 0.05;
const FOLLOWS = 0.95;

/** Readings that somebody who slips with a meter comes to: none, the whole voltage, half, a line voltage, another supply's. */
const READINGS = 5;

/** On how many wrong answers a slip falls alike: any choice, some readings; of states, the opposite. */
function slipsOn({ item, choices }: Pick<Part, 'item' | 'choices'>): number {
  if (item === 'volts') return READINGS;
  return item === 'choice' ? Math.max(1, choices - 1) : 1;
}

/** An idea has to be so many times as likely as a slip to be named. */
export const MUCH_LIKELIER = 3;

/** How many times as likely an answer is under an idea that gives just this answer as under slips alone. */
export function oddsOfIdea(parts: readonly Pick<Part, 'item' | 'correct' | 'choices'>[]): number {
  let odds = HOLDS / (1 - HOLDS);
  for (const part of parts) odds *= FOLLOWS / (part.correct ? 1 - SLIPS : SLIPS / slipsOn(part));
  // Whole odds come out whole: three is three.
  return Number(odds.toFixed(9));
}
