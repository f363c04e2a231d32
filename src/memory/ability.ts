/**
 * How much of the marks somebody earns who hasn't forgotten: from what the answers earned so far. The model of forgetting expects
 * every answer right that comes soon enough after another, whatever came of those; of who was right twice in twelve that is
 * far from the truth.
 */
import type { BegunRecall, Recall } from '../../shared/memory.ts';
import { KEPT, retrievability } from './recall.ts';
import type { Recalls } from './replay.ts';

/** What is expected of whoever has answered nothing yet, and how many answers that weighs. Common practice, no source. */
const EXPECTED = 0.95;
const WEIGHS = 2;
/** The same for a new skill, by what was earned in all the others. */
const WEIGHS_OVER_ALL = 4;

/** How many answers so many weigh together, each less than the one after it. */
const weightOf = (answers: number): number => (1 - KEPT ** answers) / (1 - KEPT);

/** The share of the marks to be expected, 0 to 1, as long as nothing is forgotten. */
export const abilityIn = ({ earned, reviews }: BegunRecall): number =>
  (earned + WEIGHS * EXPECTED) / (weightOf(reviews) + WEIGHS);

/** The same of a skill that wasn't begun: how it went with the others is how it is likely to go. */
export function abilityAhead(recalls: Recalls): number {
  let earned = WEIGHS_OVER_ALL * EXPECTED;
  let weight = WEIGHS_OVER_ALL;
  for (const recall of recalls.values()) {
    if (recall.kind === 'new') continue;
    earned += recall.earned;
    weight += weightOf(recall.reviews);
  }
  return earned / weight;
}

/** The share of the marks to be expected of an answer at a moment, 0 to 1; never practised: 0. */
export const expectedShare = (recall: Recall, at: number): number =>
  recall.kind === 'new' ? 0 : abilityIn(recall) * retrievability(recall, at);
