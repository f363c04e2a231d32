/**
 * Whether a wrong answer speaks for a wrong idea, or may as well be a slip. Three ways to it are weighed: somebody with an idea
 * answers each part as the idea has it, but for a slip now and then; somebody without answers each part rightly, but for a
 * slip. docs/misconceptions.md works it out by hand.
 */
import type { Part } from './kind.ts';

/**
 * Chances, all of them common practice, no source: to slip in one part; to hold just this idea; to answer a part as the idea has
 * it; to have given an idea up, or taken one up, from one answer to the next.
 */
const SLIPS = 0.05;
export const HOLDS = 0.05;
const FOLLOWS = 0.95;
const CHANGES = 0.2;

/** Readings that somebody who slips with a meter comes to: none, the whole voltage, half, a line voltage, another supply's. */
const READINGS = 5;

type Answered = Pick<Part, 'item' | 'correct' | 'choices'>;

/** A part of an answer, and whether it is as an idea has it. */
type Held = Answered & { readonly asIdea: boolean };

/** On how many wrong answers a slip falls alike: any choice, some readings; of states, the opposite. */
function slipsOn({ item, choices }: Answered): number {
  if (item === 'volts') return READINGS;
  return item === 'choice' ? Math.max(1, choices - 1) : 1;
}

/** An idea has to be so many times as likely as a slip to be named, and as another idea to be named without it. */
export const MUCH_LIKELIER = 3;

/** How many times as likely an answer is for somebody with an idea as for somebody who only slips. */
export function likelihoodRatio(parts: readonly Held[]): number {
  let ratio = 1;
  for (const part of parts) {
    const on = slipsOn(part);
    ratio *= (part.asIdea ? FOLLOWS : (1 - FOLLOWS) / on) / (part.correct ? 1 - SLIPS : SLIPS / on);
  }
  return ratio;
}

/**
 * How many times as likely it is, after an answer that an idea gives in every part, that the idea is held as that it is not.
 *
 * @param held - the chance that it is, before this answer
 */
export function oddsOfIdea(parts: readonly Answered[], held = HOLDS): number {
  const odds = (held / (1 - held)) * likelihoodRatio(parts.map((part) => ({ ...part, asIdea: true })));
  // Whole odds come out whole: three is three.
  return Number(odds.toFixed(9));
}

/**
 * The chance that an idea is held at the next answer.
 *
 * @param held - the chance before this one
 * @param ratio - what this one says; see `likelihoodRatio`
 */
export function heldAfter(held: number, ratio: number): number {
  const odds = (held / (1 - held)) * ratio;
  const now = odds === Infinity ? 1 : odds / (1 + odds);
  return HOLDS + (1 - CHANGES) * (now - HOLDS);
}
