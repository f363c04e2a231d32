/** Places for a set from what a tutor chooses: skills, how many items, how large, how many marks. */
import type { Recipe } from '../../shared/bank.ts';
import type { HomeworkPlace } from '../../shared/homework.ts';
import type { Checked, Problem } from '../../shared/problem.ts';
import type { QuestionKind } from '../../shared/question.ts';
import type { Course } from '../practice/index.ts';
import type { HomeworkProblemSaid } from '../words/index.ts';
import { candidateFor } from './papers/candidate.ts';
import { toleranceOf } from './papers/difficulty.ts';
import { homeworkProblem } from './problem-codes.ts';
import { finish } from './steps.ts';

/** Which part of a recipe's range of sizes. */
export type Level = 'small' | 'middle' | 'large';

export interface PlaceWish {
  readonly skill: string;
  readonly level: Level;
  readonly marks: number;
  /** Absent: the recipes' kinds take turns. */
  readonly kind?: QuestionKind;
  /** Which of the ways in which the skill is asked, from 0; they take turns. */
  readonly turn?: number;
}

/** Questions made to find out how hard those of a place are; fewer than half of them are too few. */
const SAMPLE = 24;
/** Tries at making them: a place at which too few come to something is refused. */
const SAMPLE_DRAWS = 96;
const REACH: Readonly<Record<Level, number>> = { small: 0, middle: 0.5, large: 1 };

const sizeAt = ([smallest, largest]: Recipe['size'], level: Level): number =>
  Math.round(smallest + (largest - smallest) * REACH[level]);

/** Ways in which a skill can be asked: each recipe with each of its kinds. */
const waysOf = (recipes: readonly Recipe[], kind: QuestionKind | undefined) =>
  recipes.flatMap((recipe) =>
    recipe.kinds
      .filter((each) => kind === undefined || each === kind)
      .map((each) => ({ recipe, kind: each })),
  );

/**
 * The difficulty, to a tenth, around which most questions made so are; undefined where too few come about. Not the middle:
 * some families make two sorts of questions, and the middle may lie between them.
 */
function measured(
  place: Pick<HomeworkPlace, 'kind' | 'families' | 'size' | 'happens'>,
  seed: string,
): number | undefined {
  const found: number[] = [];
  for (let draw = 0; draw < SAMPLE_DRAWS && found.length < SAMPLE; draw++) {
    const candidate = candidateFor(place, seed, 0, draw);
    if (candidate) found.push(candidate.difficulty);
  }
  if (2 * found.length < SAMPLE) return undefined;
  const around = (aim: number): number =>
    found.filter((each) => Math.abs(each - aim) <= toleranceOf(aim)).length;
  const aims = found.map((each) => Math.round(each * 10) / 10).sort((one, other) => one - other);
  const most = Math.max(...aims.map(around));
  const best = aims.filter((aim) => around(aim) === most);
  return best[best.length >> 1];
}

/**
 * A place for what is wished, its difficulty measured on a sample of questions.
 *
 * Fails with `homework-unknown-skill`, `homework-no-recipe` and `homework-no-question`.
 * @param seed - of the sample; any text
 */
export function placeFor(
  course: Pick<Course, 'skills'>,
  wish: PlaceWish,
  seed: string,
): Checked<HomeworkPlace> {
  const { skill, level, marks } = wish;
  const fail = (said: HomeworkProblemSaid): Checked<HomeworkPlace> => ({
    ok: false,
    problems: [homeworkProblem(said)],
  });
  const known = course.skills.get(skill);
  if (!known) return fail({ says: 'homework-unknown-skill', skill });
  const ways = waysOf(known.recipes, wish.kind);
  if (ways.length === 0)
    return fail({
      says: 'homework-no-recipe',
      skill,
      kind: wish.kind!,
      kinds: [...new Set(waysOf(known.recipes, undefined).map(({ kind }) => kind))],
    });
  const { recipe, kind } = ways[(wish.turn ?? 0) % ways.length]!;
  const place = {
    kind,
    families: recipe.families,
    size: sizeAt(recipe.size, level),
    ...(recipe.happens ? { happens: recipe.happens } : {}),
  };
  const difficulty = measured(place, `${seed}/${skill}/${kind}/${place.size}`);
  if (difficulty === undefined)
    return fail({ says: 'homework-no-question', kind, families: recipe.families, size: place.size });
  return { ok: true, value: { skill, ...place, difficulty, marks } };
}

export interface PlacesRequest {
  readonly skills: readonly string[];
  readonly items: number;
  readonly level: Level;
  readonly marksEach: number;
  /** Of the samples by which difficulty is measured; any text. */
  readonly seed: string;
}

/**
 * Places for a whole set: the skills take turns and so do the ways in which each is asked, because mixed practice is kept
 * better than one thing after the other (Rohrer 2014). Fails as `placeFor` does, with every problem once.
 */
export const placesFor = (
  course: Pick<Course, 'skills'>,
  request: PlacesRequest,
): Checked<readonly HomeworkPlace[]> => finish(placesInSteps(course, request));

/** The same in steps of one place each, for whoever has other things to do in between. */
export function* placesInSteps(
  course: Pick<Course, 'skills'>,
  request: PlacesRequest,
): Generator<undefined, Checked<readonly HomeworkPlace[]>> {
  const { skills, items, level, marksEach, seed } = request;
  const known = new Map<string, Checked<HomeworkPlace>>();
  const places: HomeworkPlace[] = [];
  const problems: Problem[] = [];
  for (let item = 0; item < items && skills.length > 0; item++) {
    const skill = skills[item % skills.length]!;
    const recipes = course.skills.get(skill)?.recipes ?? [];
    const turn = Math.floor(item / skills.length) % Math.max(1, waysOf(recipes, undefined).length);
    const key = `${skill} ${turn}`;
    let made = known.get(key);
    if (!made) {
      made = placeFor(course, { skill, level, marks: marksEach, turn }, seed);
      known.set(key, made);
      if (!made.ok) problems.push(...made.problems);
    }
    if (made.ok) places.push(made.value);
    yield undefined;
  }
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value: places };
}
