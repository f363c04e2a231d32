/** What a placement found, in the memory that practice goes by. */
import type { BegunRecall } from '../../shared/memory.ts';
import type { Placement } from '../../shared/settings.ts';
import { newRecall, PROVEN_ON, type Recalls, recallOf, review } from '../memory/index.ts';

/** Stands for the circuits of a placement where a memory counts circuits. */
const PLACED = Array.from({ length: PROVEN_ON }, (_, index) => `placement ${index + 1}`);

/** As if answered once, firmly, on the day of the placement: open above it, and back in a few days to be shown. */
function placed(at: number): BegunRecall {
  const once = review(newRecall(), 'firm', at, PLACED[0]!);
  return { ...once, provenOn: PLACED };
}

/**
 * The recall states that practice goes by after a placement: what was found known is held until its first review is due.
 * One lost in an answer since is no longer known. The states that are kept stay those that follow from the answers.
 */
export function withPlacement(recalls: Recalls, placement: Placement | null): Recalls {
  if (!placement) return recalls;
  const all = new Map(recalls);
  for (const skill of placement.known) {
    const recall = recallOf(recalls, skill);
    if (recall.kind === 'new') all.set(skill, placed(placement.at));
    else if (recall.provenOn.length > 0)
      all.set(skill, { ...recall, provenOn: [...recall.provenOn, ...PLACED].slice(0, PROVEN_ON) });
  }
  return all;
}
