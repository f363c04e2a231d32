import type { PaperRow } from '../../../../../shared/homework-views.ts';
import { CODE_LETTERS, readCode } from '../../../../homework/paper-code.ts';
import { tellProblems } from '../../../../words/problems.ts';
import { words } from '../../../words.ts';

/** What a whole code has at least, counted before it is read. */
const WHOLE = 9;

/**
 * The paper whose code has been typed, read as kindly as the server reads it. While the code is being typed nothing is said;
 * after that `amiss` says why there is no paper.
 */
export function paperTyped(
  code: string,
  papers: readonly PaperRow[],
): { readonly row?: PaperRow; readonly amiss: string } {
  const read = readCode(code);
  if (read.ok) {
    const row = papers.find((each) => each.code === read.value);
    return row ? { row, amiss: '' } : { amiss: words('sets').typed.noPaper };
  }
  const typed = [...code.toUpperCase()].filter((letter) => /[\p{L}\p{N}]/u.test(letter));
  const stray = typed.some((letter) => !CODE_LETTERS.includes(letter));
  if (!stray && typed.length < WHOLE) return { amiss: '' };
  const [problem] = tellProblems(words('sets'), read.problems);
  return { amiss: problem ? `${problem.message} ${problem.hint}` : '' };
}
