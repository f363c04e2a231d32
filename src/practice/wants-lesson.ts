import type { AnswerRecord } from '../../shared/practice.ts';
import { gradeOf } from '../memory/index.ts';
import { LOST_TWICE } from './growth.ts';
import { partsCounted } from './parts-counted.ts';

const isLost = ({ attempt, question, mark }: AnswerRecord): boolean =>
  gradeOf({ ...attempt, parts: partsCounted(question, mark) }).grade === 'lost';

/**
 * Whether the last answer and those to its skill before it were lost, twice in a row at least: then its lesson comes first.
 *
 * @param records - the latest of a learner's answers, in the order in which they were given
 */
export function wantsLesson(records: readonly AnswerRecord[]): boolean {
  const skill = records.at(-1)?.skill;
  const latest = records.filter((record) => record.skill === skill).slice(-LOST_TWICE);
  return latest.length === LOST_TWICE && latest.every(isLost);
}
