/**
 * Whether somebody can do it or guesses: a sequential test, answer by answer. docs/memory.md works it out by hand.
 *
 * Each answer has a ratio: how many times as likely it is from somebody who can do it as from somebody who guesses. The
 * evidence is their product, as a mixture over the answers at which somebody may have begun to be able to: before the
 * `n`th, 1/(n(n+1)) is added, which is 1 over all of them. For somebody who guesses, evidence + 1/(n+1) is then a
 * supermartingale that begins at 1, so that it ever reaches 100 with a chance of at most 1/100 (Ville's inequality, 1939;
 * mixtures over the moment of change: Shiryaev, Roberts; all from memory).
 */
import type { Attempt, Grade, PartsCounted } from '../../shared/memory.ts';

/** The chance of somebody who can do it to slip in one part. Common practice, no source. */
const SLIPS = 0.05;

/**
 * From here on a skill is shown, as by two right answers: what stands on it may be begun, and it waits for its day. Of those
 * who guess one in five gets here at most; little hangs on it.
 */
export const SHOWN_AT = 5;

/** From here on a skill is proven. Of those who guess less than one in a hundred gets here, however long they go on. */
export const PROVEN_AT = 100;

/**
 * There is never more of it, so that forgetting shows after a few answers. A skill that gets proven gets this much at once:
 * from then on the question is the opposite one, and one part wrong in one answer (a ratio of 1/19 at the least) doesn't
 * take the proof away. How soon it is first reached doesn't depend on it.
 */
export const MOST_EVIDENCE = 2000;

/** An answer is lost where more parts than this share of them are wrong or left out. */
const MOST_WRONG = 1 / 3;

/** The share of the parts that were right. Where nobody counted them it is the marks', which is never more. */
export const rightShare = ({ share, parts }: Pick<Attempt, 'share' | 'parts'>): number =>
  parts ? parts.right / Math.max(1, parts.asked) : share;

const isTooMuch = (wrong: number): boolean => wrong > MOST_WRONG + 1e-9;

export const isLost = (attempt: Pick<Attempt, 'share' | 'parts'>): boolean =>
  isTooMuch(1 - rightShare(attempt));

/** How likely all parts are right, and so many wrong that it is lost, where each is wrong with this chance. */
function outcomes(asked: number, wrong: number): readonly [whole: number, lost: number] {
  let chance = 1;
  for (let part = 0; part < asked; part++) chance *= 1 - wrong;
  const whole = chance;
  let lost = 0;
  for (let count = 0; count <= asked; count++) {
    if (isTooMuch(count / asked)) lost += chance;
    chance *= ((asked - count) * wrong) / ((count + 1) * (1 - wrong));
  }
  return [whole, lost];
}

/** How an answer counts: all right, a part or some wrong, lost. */
interface Ratios {
  readonly whole: number;
  readonly slip: number;
  readonly lost: number;
}

/** Longer questions are weighed as if they asked this much: more would show nothing more. */
const MOST_ASKED = 24;

function workedOut(asked: number, luck: number): Ratios {
  const [whole, knownLost] = outcomes(asked, SLIPS);
  if (whole <= luck) return { whole: 1, slip: 1, lost: 1 };
  const [tossed, tossedLost] = outcomes(asked, 0.5);
  // Not all right: whoever guesses as well as the table has it does that with the rest of the chance.
  const rest = 1 - luck;
  const slip = (1 - whole) / rest;
  const lost = Math.min(slip, (knownLost * (1 - tossed)) / (rest * tossedLost));
  return { whole: whole / luck, slip, lost };
}

/** The luck where nobody said it: heads or tails. */
const UNCOUNTED = 0.5;

const known = new Map<number, Ratios>();

function ratiosOf(parts: PartsCounted | undefined): Ratios {
  const asked = Math.min(MOST_ASKED, Math.max(1, parts?.asked ?? 1));
  const luck = parts?.luck ?? UNCOUNTED;
  // A chance is above 0 and 1 at most.
  const key = 2 * asked + luck;
  const there = known.get(key);
  if (there) return there;
  const ratios = workedOut(asked, luck);
  known.set(key, ratios);
  return ratios;
}

/**
 * How many times as likely an answer like this is from somebody who can do it as from somebody who guesses.
 *
 * Its expectation is at most 1 for everybody who gets no more whole answers right than `luck` says, however they
 * come by the others: of a whole answer it is a/g, of any other at most (1 - a)/(1 - g), where g is that chance and a the
 * chance of somebody who can do it; for a chance q of at most g that makes q a/g + (1 - q)(1 - a)/(1 - g), which is at
 * most 1 because it grows with q and is 1 at g.
 */
export function ratioOf(attempt: Pick<Attempt, 'share' | 'parts'>): number {
  const ratios = ratiosOf(attempt.parts);
  if (rightShare(attempt) === 1) return ratios.whole;
  return isLost(attempt) ? ratios.lost : ratios.slip;
}

/** What an answer adds to the evidence: nothing good with help, too quickly, or on a circuit that was answered before. */
export const weightOf = (ratio: number, grade: Grade, isFresh: boolean): number =>
  isFresh && (grade === 'firm' || grade === 'sure') ? ratio : Math.min(1, ratio);

/** The evidence after the `number`th answer (from 1), which has this ratio. */
export function evidenceAfter(before: number, number: number, ratio: number): number {
  const after = (before + 1 / (number * (number + 1))) * ratio;
  return before < PROVEN_AT && after >= PROVEN_AT ? MOST_EVIDENCE : Math.min(MOST_EVIDENCE, after);
}

/** A whole answer to a question of a middling size: five times as likely. */
const RIGHT = 5;

/** How many right answers would show it, from this evidence after so many answers. */
export function answersToShow(evidence: number, answered: number): number {
  let after = evidence;
  let more = 0;
  while (after < SHOWN_AT) {
    more++;
    after = evidenceAfter(after, answered + more, RIGHT);
  }
  return more;
}
