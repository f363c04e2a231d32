import type { PartsCounted } from '../../shared/memory.ts';
import type { Mark, Question } from '../../shared/question.ts';
import { luckWith } from '../questions/index.ts';

/** What the memory needs of a question and its mark. */
export const partsCounted = (question: Question, { parts }: Pick<Mark, 'parts'>): PartsCounted => ({
  asked: parts.length,
  right: parts.filter(({ correct }) => correct).length,
  luck: luckWith(question),
});
