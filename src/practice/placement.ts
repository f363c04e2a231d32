/** What a placement found, in the memory that practice goes by. */
import type { BegunRecall } from '../../shared/memory.ts';
import type { Placement } from '../../shared/settings.ts';
import { isProven, MOST_EVIDENCE, newRecall, type Recalls, recallOf, review } from '../memory/index.ts';

/** Below this the answers speak against it: what the first right answer leaves is more, of whatever kind. */
const SPEAKS_FOR = 0.5;

/** What a placement found known weighs as much as a proof does. */
const known = (recall: BegunRecall): BegunRecall =>
  isProven(recall) ? recall : { ...recall, evidence: MOST_EVIDENCE };

/** As if answered once, firmly, on the day of the placement: open above it, and back in a few days to be shown. */
const placed = (at: number): BegunRecall =>
  known(review(newRecall(), { grade: 'firm', at, circuit: 'placement', share: 1, ratio: 1 }));

/**
 * The recall states that practice goes by after a placement: what was found known is held until its first review is due.
 * One of which the answers since speak against it is no longer known. The states that are kept stay those that follow from the answers.
 */
export function withPlacement(recalls: Recalls, placement: Placement | null): Recalls {
  if (!placement) return recalls;
  const all = new Map(recalls);
  for (const skill of placement.known) {
    const recall = recallOf(recalls, skill);
    if (recall.kind === 'new') all.set(skill, placed(placement.at));
    else if (recall.evidence >= SPEAKS_FOR) all.set(skill, known(recall));
  }
  return all;
}
