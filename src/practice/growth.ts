/** How large the circuits of a skill are by now: as large as its learner succeeds at, however often it was practised. */
import type { Recall } from '../../shared/memory.ts';
import { isProven } from '../memory/index.ts';

/** At this growth a skill is asked at its recipe's largest size. */
export const FULL_GROWTH = 6;

/** What success over time adds at most. */
const OVER_TIME = 4;
/** So many lost answers in a row, and the lesson comes before the next circuit, which is one of the smallest. */
export const LOST_TWICE = 2;
/** Evidence from which on there is some success lately, as after one right answer. */
const SOME = 2;
/** Days of stability from which that begins, and at which it is whole. Common practice, no source. */
const BEGINS_AT = 1;
const WHOLE_AT = 60;

/**
 * 0 (the smallest circuits) to `FULL_GROWTH`. A lost answer takes away what was shown lately and most of the stability, so the next
 * circuit is smaller; after two in a row it is one of the smallest, and who never gets it right stays with these.
 */
export function growthOf(recall: Recall): number {
  if (recall.kind === 'new' || recall.lostLately >= LOST_TWICE) return 0;
  const lasting = Math.log(recall.stability / BEGINS_AT) / Math.log(WHOLE_AT / BEGINS_AT);
  const lately = recall.lostLately > 0 || recall.evidence < SOME ? 0 : isProven(recall) ? 2 : 1;
  return lately + Math.round(OVER_TIME * Math.min(1, Math.max(0, lasting)));
}
