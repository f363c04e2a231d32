/** English: what defines the words of every language. */
import { answering } from './answering.ts';
import { asking } from './asking.ts';
import { grading } from './grading.ts';
import { interchange } from './interchange.ts';
import { paper } from './paper.ts';
import { bankProblems } from './problems/banks.ts';
import { homeworkProblems, interchangeProblems } from './problems/homework.ts';
import { ruleReasons, ruleSources } from './problems/rules.ts';
import { server } from './server/index.ts';
import { typed } from './typed.ts';

const problems = { ...answering.problems, ...homeworkProblems, ...interchangeProblems, ...bankProblems };

export const english = {
  ...asking,
  ...answering,
  problems,
  ruleReasons,
  ruleSources,
  grading,
  typed,
  paper,
  interchange,
  server,
};
