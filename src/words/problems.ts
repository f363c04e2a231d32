/** Problems as statements, and how they are told. */
import type { Problem, ProblemPlace, ToldProblem } from '../../shared/problem.ts';
import type { Said } from './statement.ts';

/** What a language says of a problem: what is wrong, and what would be right. */
export interface ToldWords {
  readonly wrong: string;
  readonly right: string;
}

/** What is said of one kind of problem. */
export type ProblemSaying = ToldWords | ((values: never) => ToldWords);

/** What is said of problems, by statement. */
export type ProblemSayings = Readonly<Record<string, ProblemSaying>>;

/** Words of a language that problems can be told with. */
export interface ProblemWords {
  readonly problems: ProblemSayings;
}

/** The code of a statement: what stands before the dot of what it says. */
export type CodeOf<Says extends string> = Says extends `${infer Code}.${string}` ? Code : Says;

export const codeOf = <Says extends string>(says: Says): CodeOf<Says> =>
  says.split('.', 1)[0] as CodeOf<Says>;

/** A problem of one floor: `S` is what that floor has to say. */
export const problemSaying = <S extends Said>(said: S, place: ProblemPlace = {}): Problem => ({
  code: codeOf(said.says),
  ...place,
  said,
});

/**
 * What a language says of a statement.
 *
 * @throws RangeError where these words, a part of a language's, say nothing of it
 */
export function tellSaid(problems: ProblemSayings, said: Said): ToldWords {
  const saying = problems[said.says];
  if (!saying) throw new RangeError(`there are no words for ${said.says}`);
  return typeof saying === 'function' ? saying(said as never) : saying;
}

/** A problem in a language. */
export function tellProblem({ problems }: ProblemWords, problem: Problem): ToldProblem {
  const { code, line, column, file, said } = problem;
  const { wrong, right } = tellSaid(problems, said);
  return {
    code,
    ...(line === undefined ? {} : { line }),
    ...(column === undefined ? {} : { column }),
    ...(file === undefined ? {} : { file }),
    message: wrong,
    hint: right,
  };
}

export const tellProblems = (words: ProblemWords, problems: readonly Problem[]): ToldProblem[] =>
  problems.map((problem) => tellProblem(words, problem));
