/** How hard a question on a paper is, and how far it may be from what its place is held to. */
import type { Question } from '../../../shared/question.ts';
import { type Accepted, difficultyOf } from '../../generator/index.ts';
import { itemsCounted } from '../../questions/index.ts';

/** Share of a place's difficulty by which a question may be easier or harder. */
export const DIFFICULTY_SHARE = 0.12;
/** And at least this much, in units of the difficulty, so that small circuits aren't all alike. */
export const DIFFICULTY_LEAST = 0.4;

/** How far a question's difficulty may be from the place's, both ways. */
export const toleranceOf = (difficulty: number): number =>
  Math.max(DIFFICULTY_LEAST, DIFFICULTY_SHARE * difficulty);

/**
 * The generator's measure for what is asked: only the lamps, inputs and relays that the question asks about count, and
 * only their networks. Where a question asks for something else (a voltage, a pair of terminals) the whole drawing counts.
 */
export function questionDifficulty(accepted: Accepted, question: Question): number {
  const { draft } = accepted;
  const asked = itemsCounted(question);
  const only = (items: readonly string[]): readonly string[] =>
    asked ? items.filter((item) => asked.has(item)) : items;
  const { scenario } = question;
  return difficultyOf({
    ...accepted,
    draft: {
      ...draft,
      scenario,
      lamps: only(draft.lamps),
      inputs: only(draft.inputs),
      relays: only(draft.relays),
    },
  });
}
