/** How large the circuits of a skill are by now: as large as its learner succeeds at, however often it was practised. */
import type { Recall } from '../../shared/memory.ts';

/** At this growth a skill is asked at its recipe's largest size. */
export const FULL_GROWTH = 6;

/** What success over time adds at most; the rest is success since the skill was last lost, on up to two circuits. */
const OVER_TIME = 4;
/** Days of stability from which that begins, and at which it is whole. Common practice, no source. */
const BEGINS_AT = 1;
const WHOLE_AT = 60;

/**
 * 0 (the smallest circuits) to `FULL_GROWTH`. A lost answer takes away what was proven since the last one and most of the stability,
 * so the next circuit is smaller; who never gets it right stays with the smallest.
 */
export function growthOf(recall: Recall): number {
  if (recall.kind === 'new') return 0;
  const lasting = Math.log(recall.stability / BEGINS_AT) / Math.log(WHOLE_AT / BEGINS_AT);
  return recall.provenOn.length + Math.round(OVER_TIME * Math.min(1, Math.max(0, lasting)));
}
