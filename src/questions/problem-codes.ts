/**
 * The codes of everything that can be wrong with an answer or with a question somebody wrote. Once given, a code keeps its
 * meaning; one that is given up is not used again. docs/errors.md says what each means.
 */
import type { QuestionProblemSaid } from '../words/index.ts';
import { type CodeOf, problemSaying } from '../words/problems.ts';

export const QUESTION_CODES = [
  'answer-missing',
  'answer-unknown-item',
  'answer-unknown-word',
  'answer-without-state',
  'answer-twice',
  'answer-count',
  'answer-ambiguous',
  'answer-not-a-number',
  'answer-no-such-choice',
  'answer-other-kind',
  'answer-impossible-state',
  'question-unknown-item',
  'question-asked-twice',
  'question-not-certain',
  'question-not-offered',
  'question-between',
  'question-no-such-step',
  'question-choices',
] as const satisfies readonly CodeOf<QuestionProblemSaid['says']>[];

export const questionProblem = problemSaying<QuestionProblemSaid>;
