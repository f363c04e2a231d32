/**
 * The codes of everything that can be wrong with a homework set, its papers and marks, and with files that come from
 * other systems. Once given, a code keeps its meaning; one that is given up is not used again. docs/errors.md has the same
 * rows.
 */
import type { Problem } from '../../shared/problem.ts';

export const HOMEWORK_PROBLEMS = {
  'homework-times': 'A set that closes before it opens, or at the same moment.',
  'homework-unknown-skill': "A place asks for a skill that the banks haven't got.",
  'homework-unknown-family': 'A place asks for a family of circuits that there is not.',
  'homework-no-recipe': 'A skill is wanted in a kind of question that none of its recipes makes.',
  'homework-no-question': 'No question that fits its place could be made.',
  'homework-too-few-circuits': 'There are not enough different circuits for a place.',
  'homework-no-such-item': "A mark is changed of an item that the paper hasn't got.",
  'homework-too-many-marks': 'An item is given more marks than it has.',
  'homework-code-letter': "A character that a paper's code can't have.",
  'homework-code-length': "A paper's code with too few or too many characters.",
  'homework-code-check': "A paper's code that can't be one: something in it is typed wrongly.",
} as const;

export const INTERCHANGE_PROBLEMS = {
  'csv-quote': 'A quotation mark in a CSV file where none can be, or one that is not closed.',
  'csv-width': 'A line of a CSV file with more or fewer fields than its first line.',
  'csv-empty': 'A CSV file without a first line.',
  'roster-missing-file': 'A file that a roster needs is not there.',
  'roster-missing-column': 'A column that a roster file needs is not there.',
  'roster-missing-value': 'A value that a roster needs is empty.',
  'roster-bad-value': 'A value in a roster that is none of those it can have.',
  'roster-twice': 'A sourcedId that is there twice in one roster file.',
  'roster-unknown-reference': 'A sourcedId in a roster that refers to nothing in it.',
} as const;

export type HomeworkCode = keyof typeof HOMEWORK_PROBLEMS;
export type InterchangeCode = keyof typeof INTERCHANGE_PROBLEMS;

export const homeworkProblem = (code: HomeworkCode, message: string, hint: string): Problem => ({
  code,
  message,
  hint,
});
