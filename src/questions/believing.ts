/** What somebody with a misconception answers: for predictions, for trials of reports, for made-up learners. */
import type { Answer, Question } from '../../shared/question.ts';
import { MISCONCEPTIONS } from '../misconceptions/index.ts';
import { kindOf } from './registry.ts';
import { rightSolver, wrongSolve } from './solving.ts';

/**
 * The answer that follows from a misconception; where it makes no difference the right one. Undefined where it comes to
 * nothing that could be answered.
 *
 * @throws RangeError for a misconception that there isn't
 */
export function answerBelieving(question: Question, misconception: string): Answer | undefined {
  const found = MISCONCEPTIONS.find(({ id }) => id === misconception);
  if (!found) throw new RangeError(`There is no misconception ${misconception}.`);
  return kindOf(question.kind).answerBy(question, wrongSolve(found, rightSolver()));
}

/** Whether somebody who holds the one idea answers a question otherwise than somebody who holds the other. */
export function answeredApart(question: Question, one: string, other: string): boolean {
  const [first, second] = [one, other].map((id) => answerBelieving(question, id));
  if (!first || !second) return false;
  return kindOf(question.kind)
    .parts(question, first, second)
    .parts.some(({ correct }) => !correct);
}
