/** How far apart the reviews of one skill are put when there is a day to be ready for. */
import { daysUntil } from './model.ts';
import { DAY, SLACK } from './time.ts';

/**
 * The best gap between two practices is about a fifth of the time from the second one to the test, where that is weeks
 * (Cepeda and others 2008).
 */
export const GAP_SHARE = 0.2;

/**
 * Whether a review comes long enough after the one before it, which left this stability: a fifth of what is then left, or
 * less if the skill is due sooner, and never twice in a day.
 *
 * @param gap - days since the review before
 * @param left - days from it to the one on which it is to be known
 */
export function isFarEnough(gap: number, left: number, stability: number, target: number): boolean {
  const spaced = gap + SLACK / DAY;
  return spaced >= Math.max(1, GAP_SHARE * left) || spaced >= daysUntil(target, stability);
}
