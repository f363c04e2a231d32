/** How far apart the reviews of one skill are put when there is a day to be ready for. */
import { afterFirstDay, type Start } from './expectation.ts';
import { daysUntil, memoryAfter } from './model.ts';
import { DAY, SLACK } from './time.ts';

/**
 * The best gap between two practices is about a fifth of the time from the second one to the test, where that is weeks
 * (Cepeda and others 2008).
 */
export const GAP_SHARE = 0.2;

/**
 * Whether the review on `day` and those after it are far enough from the ones before them: a fifth of what is then left
 * until day `on`, or less if the skill is due sooner, and never twice in a day. `days` are ascending and include `day`.
 */
export function isSpaced(
  start: Start,
  days: readonly number[],
  day: number,
  on: number,
  target: number,
): boolean {
  let memory = start.memory ?? afterFirstDay();
  let last = start.memory === null ? days[0]! : start.last;
  for (const review of start.memory === null ? days.slice(1) : days) {
    const gap = review - last;
    const wanted = Math.min(Math.max(1, GAP_SHARE * (on - review)), daysUntil(target, memory.stability));
    if (review >= day && gap + SLACK / DAY < wanted) return false;
    memory = memoryAfter(memory, Math.max(0, gap), 'firm');
    last = review;
  }
  return true;
}
