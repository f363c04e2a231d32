/** What the core says, said in English: for tests that look at sentences. */
import type { Circuit } from '../../shared/circuit.ts';
import type { Checked, Problem, ToldProblem } from '../../shared/problem.ts';
import type { Answer, Asked, Question, ToldMark } from '../../shared/question.ts';
import { layOut as layOutAny, layOutPages, type PageOptions, type Scene } from '../../src/drawing/index.ts';
import type { PagedProfile, Profile } from '../../src/drawing/layout/profile.ts';
import * as core from '../../src/questions/index.ts';
import { english } from '../../src/words/en/core.ts';
import { say } from '../../src/words/index.ts';
import { tellProblems } from '../../src/words/problems.ts';

export { english };

export const told = (problems: readonly Problem[]): ToldProblem[] => tellProblems(english, problems);

/** The problems of a result that must have been refused. */
export const refusedWith = (checked: Checked<unknown>): ToldProblem[] =>
  checked.ok ? [] : told(checked.problems);

export const askQuestion = (question: Question): Asked =>
  core.tellQuestion(english, core.askQuestion(question));

export const markAnswer = (question: Question, answer: Answer): ToldMark =>
  core.tellMark(english, core.markAnswer(question, answer), core.explain(question));

export const hintFor = (question: Question): string => say(english.hints, core.hintFor(question));

export const readAnswer = (question: Question, text: string): Checked<Answer> =>
  core.readAnswer(english, question, text);

/** Laid out with an English title block where there is one. */
export const layOut = (
  circuit: Circuit,
  profile: Profile | PagedProfile,
  options: Omit<PageOptions, 'words'> = {},
): Scene =>
  'page' in profile
    ? layOutPages(english, circuit, profile, { words: english.drawing.frame, ...options })
    : layOutAny(english, circuit, profile, options);
