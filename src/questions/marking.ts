/** The rule for part marks, and which wrong ideas give an answer. docs/questions.md says the same in words. */

import type { Problem } from '../../shared/problem.ts';
import type { Answer, Question } from '../../shared/question.ts';
import { MISCONCEPTIONS, type Misconception } from '../misconceptions/index.ts';
import type { Kind, Part } from './kind.ts';
import { questionProblem } from './problem-codes.ts';
import type { Marking } from './said.ts';
import { MUCH_LIKELIER, oddsOfIdea } from './slip-or-idea.ts';
import { rightSolver, type Solver, wrongSolve } from './solving.ts';

/**
 * Right minus wrong: a right part earns a mark, a wrong one costs 1/(choices - 1) of one, one left out costs nothing. Who
 * guesses everything earns nothing on average, so nothing is gained by it; the whole is never below 0. This is the
 * classical correction for guessing of test theory (Frary 1988), and the only one: memory goes by the parts themselves.
 */
export function shareOf(parts: readonly Part[]): number {
  if (parts.length === 0) return 0;
  let marks = 0;
  for (const { correct, given, choices } of parts) {
    if (correct) marks += 1;
    else if (given !== undefined && choices > 1) marks -= 1 / (choices - 1);
  }
  return Math.max(0, Math.min(1, marks / parts.length));
}

const withoutChoices = ({ choices: _, ...part }: Part): Omit<Part, 'choices'> => part;

/** Whether two answers are the same in every part; left out counts as different from anything. */
function same(kind: Kind<Question['kind']>, question: Question, one: Answer, other: Answer): boolean {
  const { parts, problems } = kind.parts(question, one, other);
  return problems.length === 0 && parts.length > 0 && parts.every(({ correct }) => correct);
}

/**
 * The ideas that give just this answer, however it came about; none for one that is right or leaves something out.
 *
 * @throws RangeError when the question has no right answer; `checkQuestion` tells why
 */
export function ideasGiving(
  kind: Kind<Question['kind']>,
  question: Question,
  answer: Answer,
  solver: Solver,
): { readonly ideas: readonly Misconception[]; readonly parts: readonly Part[] } {
  const right = rightBy(kind, question, solver);
  const { parts } = kind.parts(question, answer.kind === question.kind ? answer : kind.blank, right);
  const complete = parts.length > 0 && parts.every(({ given }) => given !== undefined);
  if (!complete || parts.every(({ correct }) => correct)) return { ideas: [], parts };
  const ideas = MISCONCEPTIONS.filter((misconception) => {
    const wrong = kind.answerBy(question, wrongSolve(misconception, solver));
    return wrong !== undefined && !same(kind, question, wrong, right) && same(kind, question, answer, wrong);
  });
  return { ideas, parts };
}

function rightBy(kind: Kind<Question['kind']>, question: Question, { solve }: Solver): Answer {
  const right = kind.answerBy(question, solve);
  if (!right) throw new RangeError('the question has no right answer; checkQuestion tells why');
  return right;
}

/** Marks an answer. Whatever the answer holds, it is marked and reported, never thrown. */
export function markWith(kind: Kind<Question['kind']>, question: Question, answer: Answer): Marking {
  const solver = rightSolver();
  const right = rightBy(kind, question, solver);
  const other: Problem[] =
    answer.kind === question.kind
      ? []
      : [questionProblem({ says: 'answer-other-kind', given: answer.kind, asked: question.kind })];
  const blank = kind.parts(question, kind.blank, right);
  const { parts, problems } = other.length > 0 ? blank : kind.parts(question, answer, right);
  const correct = parts.length > 0 && parts.every((part) => part.correct);
  // Worked out only where it is needed: it costs as much as all else.
  const speaks = !correct && oddsOfIdea(parts) >= MUCH_LIKELIER;
  const { ideas } = speaks ? ideasGiving(kind, question, answer, solver) : { ideas: [] };
  return {
    mark: {
      share: shareOf(parts),
      correct,
      parts: parts.map(withoutChoices),
      misconceptions: ideas.map(({ id }) => id),
    },
    problems: [...other, ...problems],
  };
}
