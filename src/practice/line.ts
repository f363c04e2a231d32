import type { AnswerLine, AnswerRecord } from '../../shared/practice.ts';
import type { Mark } from '../../shared/question.ts';

/** What a line says of a mark. */
export function inShort({ correct, misconceptions }: Mark): Pick<AnswerLine, 'correct' | 'idea'> {
  const [only, another] = misconceptions;
  return { correct, idea: only !== undefined && another === undefined ? only : null };
}

/** An answer in short, before it has arrived where it is kept. */
export const lineOf = ({ id, skill, circuit, at, attempt, mark }: AnswerRecord): AnswerLine => ({
  id,
  skill,
  circuit,
  at,
  attempt,
  number: null,
  ...inShort(mark),
});
