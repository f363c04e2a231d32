/** What a question that stands there may still need: its mark, and a hint. A module of its own, for the page fetches it later. */
import type { Answer, Question } from '../../shared/question.ts';
import type { HintSaid } from '../words/index.ts';
import { explainerOf } from './explain/explainers.ts';
import { idleIn } from './explain/idle.ts';
import { markWith } from './marking.ts';
import { kindOf } from './registry.ts';
import type { Explanation, Marking } from './said.ts';

/** Marks an answer: part by part, with the wrong ideas that give exactly this answer, and why the right one is right. */
export const markAnswer = (question: Question, answer: Answer): Marking =>
  markWith(kindOf(question.kind), question, answer);

/** The first thing to look at. It doesn't tell the answer. */
export const hintFor = (question: Question): HintSaid => explainerOf(question.kind).hint(question);

/** Why the right answer is right, and what of all that is told doesn't matter for it. */
export function explain(question: Question): Explanation {
  const explanation = explainerOf(question.kind).explain(question);
  return { ...explanation, decides: [...explanation.decides, ...idleIn(question, explanation)] };
}
