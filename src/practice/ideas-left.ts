import type { AnswerRecord } from '../../shared/practice.ts';
import { ideasToTell } from '../questions/index.ts';
import type { IdeasLeft } from './telling-apart.ts';

/**
 * The ideas to tell with the latest of a learner's answers.
 *
 * @param records - all of the learner's answers, or the latest of them, in the order in which they were given
 */
export function ideasTold(records: readonly AnswerRecord[]): readonly string[] {
  const last = records.at(-1);
  if (!last || last.mark.correct) return [];
  const earlier = records.slice(0, -1).filter(({ skill }) => skill === last.skill);
  return ideasToTell(last.question, last.answer, earlier);
}

/** The two ideas that are left where neither is much likelier than the other. */
export function bothLeft([one, other]: readonly string[]): IdeasLeft | undefined {
  return one !== undefined && other !== undefined ? [one, other] : undefined;
}
