/** The next question: which skill, then a circuit for it that the learner hasn't seen. */
import type { FixedQuestion, Recipe } from '../../shared/bank.ts';
import type { Question } from '../../shared/question.ts';
import type { Placement } from '../../shared/settings.ts';
import { fingerprint, generate, type Random, randomOf, seedOf } from '../generator/index.ts';
import { type Choice, choose, newRecall, type Recalls } from '../memory/index.ts';
import { proposeQuestion, secondsExpected } from '../questions/index.ts';
import { withPlacement } from './placement.ts';
import type { Course, Task } from './types.ts';

export interface TaskRequest {
  readonly course: Course;
  readonly recalls: Recalls;
  /** Milliseconds since 1970. */
  readonly at: number;
  /** Fixes every choice; with it and `number` the same task comes again. */
  readonly seed: string;
  /** Which question of this practice, from 0. */
  readonly number: number;
  /** Skills asked in this practice so far, the latest last. */
  readonly recent: readonly string[];
  /** Circuits the learner has answered before: they aren't asked again. */
  readonly seen: ReadonlySet<string>;
  /** Only this skill, whatever the memory says. */
  readonly only?: string;
  /** Skills that a plan wants today. */
  readonly planned?: readonly string[];
  /** What a placement found: it is taken as known. */
  readonly placement?: Placement | null;
  /** How many skills may be begun in a day; null or left out: as the memory has it. */
  readonly newADay?: number | null;
}

/** Circuits made for one task before giving up on this skill. */
const MOST_TRIES = 40;
/** Reviews after which a skill is asked at its recipe's largest size. */
const LARGEST_AFTER = 6;

function chooseSkill(request: TaskRequest): Choice {
  const { course, recalls, at, recent, seed, only, planned, placement = null, newADay } = request;
  if (only !== undefined)
    return course.skills.has(only) ? { kind: 'planned', skill: only } : { kind: 'none' };
  return choose({
    graph: course.graph,
    recalls: withPlacement(recalls, placement),
    at,
    recent,
    seed: seedOf(seed),
    ...(planned ? { planned } : {}),
    ...(typeof newADay === 'number' ? { newADay } : {}),
  });
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

/** What somebody wrote comes first: a skill is begun with a question made for beginning it. */
function fixedFor(
  request: TaskRequest,
  skill: string,
): { fixed: FixedQuestion; circuit: string } | undefined {
  for (const { questions } of request.course.bank.topics) {
    for (const fixed of questions) {
      if (fixed.skill !== skill) continue;
      const circuit = fingerprint(fixed.question.circuit);
      if (!request.seen.has(circuit)) return { fixed, circuit };
    }
  }
  return undefined;
}

function freshFor(request: TaskRequest, skill: string): { question: Question; circuit: string } | undefined {
  const { course, recalls, seed, number, seen } = request;
  const recall = recalls.get(skill) ?? newRecall();
  const reviews = recall.kind === 'new' ? 0 : recall.reviews;
  const random = randomOf(`${seed}/${number}/${skill}`);
  for (let attempt = 0; attempt < MOST_TRIES; attempt++) {
    const recipe = pickRecipe(random, course.skills.get(skill)!.recipes);
    const [smallest, largest] = recipe.size;
    const reach = Math.min(1, reviews / LARGEST_AFTER);
    // Up to the size the learner has come to; once in a while a smaller one.
    const size = random.int(
      random.chance(0.75) ? Math.round(smallest + (largest - smallest) * reach) : smallest,
      Math.round(smallest + (largest - smallest) * reach),
    );
    const child = `${seed}/${number}/${skill}/${attempt}`;
    const made = generate({ seed: child, family: random.pick(recipe.families), size });
    if (!made.ok) continue;
    const question = proposeQuestion(made.accepted.draft, recipe.kinds, randomOf(`${child}/question`));
    if (!question) continue;
    const circuit = fingerprint(question.circuit);
    if (!seen.has(circuit)) return { question: { ...question, seed: child }, circuit };
  }
  return undefined;
}

/**
 * The next task, or why there is none: nothing to practise, or no circuit of this skill that is new to the learner was
 * found (a fault of the bank's recipes).
 */
export function nextTask(
  request: TaskRequest,
):
  | { readonly ok: true; readonly task: Task }
  | { readonly ok: false; readonly reason: 'nothing' | 'no-circuit'; readonly skill?: string } {
  const choice = chooseSkill(request);
  if (choice.kind === 'none') return { ok: false, reason: 'nothing' };
  const { skill, kind: why } = choice;
  const begun = request.recalls.get(skill)?.kind === 'begun';
  const fixed = begun ? undefined : fixedFor(request, skill);
  if (fixed) {
    const { question, because } = fixed.fixed;
    const task = { skill, why, question, circuit: fixed.circuit, secondsExpected: secondsExpected(question) };
    return { ok: true, task: because === undefined ? task : { ...task, because } };
  }
  const fresh = freshFor(request, skill);
  if (!fresh) return { ok: false, reason: 'no-circuit', skill };
  return { ok: true, task: { skill, why, ...fresh, secondsExpected: secondsExpected(fresh.question) } };
}
