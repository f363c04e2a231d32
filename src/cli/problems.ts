import type { Problem, ToldProblem } from '../../shared/problem.ts';
import { tellProblem } from '../words/problems.ts';
import { coreWordsOf } from './core-words.ts';
import type { Io } from './io.ts';
import { styleFor } from './style.ts';

/** One problem as `file:line:column: what is wrong` with what would be right under it. */
export function problemText(problem: ToldProblem, file: string, io: Pick<Io, 'colour'>): string {
  const style = styleFor(io);
  const place = [problem.file ?? file, problem.line, problem.line && problem.column]
    .filter(Boolean)
    .join(':');
  const hint = problem.hint ? `\n    ${problem.hint}` : '';
  return `${style.strong(place)}: ${problem.message}${hint}`;
}

/** Prints problems and gives the exit code for bad input. */
export async function reportProblems(problems: readonly Problem[], file: string, io: Io): Promise<2> {
  const words = await coreWordsOf(io);
  for (const problem of problems) io.err(problemText(tellProblem(words, problem), file, io));
  io.err(io.words.problems.nothingDone(problems.length));
  return 2;
}
