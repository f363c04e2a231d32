/**
 * The codes of everything that can be wrong with a homework set, its papers and marks, and with files that come from
 * other systems. Once given, a code keeps its meaning; one that is given up is not used again. docs/errors.md says what
 * each means.
 */
import type { HomeworkProblemSaid, InterchangeProblemSaid } from '../words/index.ts';
import { type CodeOf, problemSaying } from '../words/problems.ts';

export const HOMEWORK_CODES = [
  'homework-times',
  'homework-unknown-skill',
  'homework-unknown-family',
  'homework-no-recipe',
  'homework-no-question',
  'homework-too-few-circuits',
  'homework-no-such-item',
  'homework-too-many-marks',
  'homework-code-letter',
  'homework-code-length',
  'homework-code-check',
] as const satisfies readonly CodeOf<HomeworkProblemSaid['says']>[];

export const INTERCHANGE_CODES = [
  'csv-quote',
  'csv-width',
  'csv-empty',
  'roster-missing-file',
  'roster-missing-column',
  'roster-missing-value',
  'roster-bad-value',
  'roster-twice',
  'roster-unknown-reference',
] as const satisfies readonly CodeOf<InterchangeProblemSaid['says']>[];

export const homeworkProblem = problemSaying<HomeworkProblemSaid>;
export const interchangeProblem = problemSaying<InterchangeProblemSaid>;
