/** One fresh question on a skill, or none: everything follows from the seed, so that it can be made again elsewhere. */
import type { Recipe } from '../../shared/bank.ts';
import type { Question } from '../../shared/question.ts';
import { AS_FOUND_SHARE, fingerprint, generate, type Random, randomOf } from '../generator/index.ts';
import { askCourse, mayAsk, mayBeAsFound, proposeQuestion } from '../questions/index.ts';
import { FULL_GROWTH } from './growth.ts';

export interface Candidate {
  readonly question: Question;
  /** The same text for the same circuit however its devices are named. */
  readonly circuit: string;
}

/** Recipes take turns in proportion to their share. */
function pickRecipe(random: Random, recipes: readonly Recipe[]): Recipe {
  const total = recipes.reduce((sum, { share }) => sum + share, 0);
  let left = (random.int(0, 999_999) / 1_000_000) * total;
  for (const recipe of recipes) {
    left -= recipe.share;
    if (left < 0) return recipe;
  }
  return recipes.at(-1)!;
}

/** @param grown - how far the skill's circuits have grown, 0 to `FULL_GROWTH` and no further */
export function candidateFor(recipes: readonly Recipe[], grown: number, seed: string): Candidate | undefined {
  const random = randomOf(`${seed}/choice`);
  const recipe = pickRecipe(random, recipes);
  const [smallest, largest] = recipe.size;
  const reach = Math.min(1, grown / FULL_GROWTH);
  // Up to the size the learner has come to; once in a while a smaller one.
  const size = random.int(
    random.chance(0.75) ? Math.round(smallest + (largest - smallest) * reach) : smallest,
    Math.round(smallest + (largest - smallest) * reach),
  );
  const made = generate({
    seed,
    family: random.pick(recipe.families),
    size,
    course: askCourse(recipe.kinds),
    mayAsk: mayAsk(recipe.kinds, recipe.happens),
    asFound: mayBeAsFound(recipe.kinds) && random.child('as-found').chance(AS_FOUND_SHARE),
  });
  if (!made.ok) return undefined;
  const question = proposeQuestion(made.accepted.draft, recipe.kinds, randomOf(`${seed}/question`));
  return question && { question: { ...question, seed }, circuit: fingerprint(question.circuit) };
}
