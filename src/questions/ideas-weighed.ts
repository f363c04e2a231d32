/**
 * Which wrong ideas are told with a mark: of those that give just this answer the one or two that what was answered before
 * speaks for. docs/misconceptions.md works it out by hand.
 */
import type { Answer, Question } from '../../shared/question.ts';
import type { Misconception } from '../misconceptions/index.ts';
import { ideasGiving } from './marking.ts';
import { kindOf } from './registry.ts';
import { HOLDS, heldAfter, likelihoodRatio, MUCH_LIKELIER, oddsOfIdea } from './slip-or-idea.ts';
import { rightSolver, wrongSolve } from './solving.ts';

/** A question answered before. */
export interface Earlier {
  readonly question: Question;
  readonly answer: Answer;
}

/** Earlier answers that are looked at. The one before these weighs 0.8 to the twelfth, some 7 %, and costs as much. */
const LOOKED_BACK = 12;

/** An answer that more ideas explain speaks for none of them: who is told of six is told of none. */
const MOST_IDEAS = 2;

/** What an earlier answer says of each of some ideas: how many times as likely it is with it; 1 where it makes no difference. */
function ratiosOf({ question, answer }: Earlier, ideas: readonly Misconception[]): readonly number[] {
  const nothing = ideas.map(() => 1);
  if (answer.kind !== question.kind) return nothing;
  const kind = kindOf(question.kind);
  const solver = rightSolver();
  const right = kind.answerBy(question, solver.solve);
  if (!right) return nothing;
  const { parts } = kind.parts(question, answer, right);
  return ideas.map((idea) => {
    const wrong = kind.answerBy(question, wrongSolve(idea, solver));
    if (!wrong) return 1;
    const asIdea = kind.parts(question, answer, wrong).parts;
    const answered = parts.flatMap((part, index) =>
      part.given === undefined ? [] : [{ ...part, asIdea: asIdea[index]?.correct === true }],
    );
    return likelihoodRatio(answered);
  });
}

/**
 * The ideas to tell with the mark of an answer, the likeliest first; none where it may as well be a slip, or where more than
 * two explain it alike.
 *
 * @param earlier - what the same learner answered before to questions of the same skill, the latest last
 */
export function ideasToTell(question: Question, answer: Answer, earlier: readonly Earlier[]): string[] {
  const { ideas, parts } = ideasGiving(kindOf(question.kind), question, answer, rightSolver());
  if (ideas.length === 0) return [];
  let held = ideas.map(() => HOLDS);
  for (const one of earlier.slice(-LOOKED_BACK)) {
    const ratios = ratiosOf(one, ideas);
    held = held.map((chance, index) => heldAfter(chance, ratios[index]!));
  }
  const likely = ideas
    .map(({ id }, index) => ({ id, odds: oddsOfIdea(parts, held[index]!) }))
    .filter(({ odds }) => odds >= MUCH_LIKELIER)
    .toSorted((one, other) => other.odds - one.odds);
  const told = likely.filter(({ odds }) => odds * MUCH_LIKELIER > likely[0]!.odds);
  return told.length > MOST_IDEAS ? [] : told.map(({ id }) => id);
}
