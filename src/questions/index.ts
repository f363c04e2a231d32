/** Questions on circuits: proposed, asked, marked and explained, each by its kind. */

import type { Circuit } from '../../shared/circuit.ts';
import type { Checked, Problem } from '../../shared/problem.ts';
import type { Answer, PublicQuestion, Question, QuestionKind } from '../../shared/question.ts';
import type { Happening, Scenario } from '../../shared/scenario.ts';
import type { Draft, Random } from '../generator/index.ts';
import type { AskingWords, Words } from '../words/index.ts';
import { readerOf } from './answer/readers.ts';
import { oneHappens } from './happenings.ts';
import { KINDS, kindOf } from './registry.ts';
import type { QuestionSaid } from './said.ts';
import { rightSolver } from './solving.ts';
import { tellQuestion } from './told.ts';
import { UNLETTERED_SHARE, unlettered } from './unlettered.ts';

export { explain, hintFor, markAnswer } from './answered.ts';
export { answerBelieving, answeredApart } from './believing.ts';
export { circuitsTold } from './circuits-told.ts';
export { type Earlier, ideasToTell } from './ideas-weighed.ts';
export { type ItemKind, itemKind, STATES } from './items.ts';
export type { Kind } from './kind.ts';
export { readingOf } from './kinds/meter/kind.ts';
export { shareOf } from './marking.ts';
export { QUESTION_CODES } from './problem-codes.ts';
export { KINDS } from './registry.ts';
export type { Explanation, Marking, QuestionSaid } from './said.ts';
export { tellQuestion } from './told.ts';
export { tellAnswer, tellExplanation, tellIdea, tellMark, tellPart } from './told-mark.ts';

/**
 * A question on an accepted draft, in one of the kinds: they are tried in random order. Undefined when none of them fits
 * the draft.
 */
export function proposeQuestion(
  draft: Draft,
  kinds: readonly QuestionKind[],
  random: Random,
): Question | undefined {
  const solver = rightSolver();
  for (const kind of random.shuffle(kinds)) {
    const question = KINDS[kind].propose(draft, random.child(kind), solver);
    if (!question || kindOf(kind).check(question, solver).length > 0) continue;
    const plain = !question.circuit.asFound && random.child('words').chance(UNLETTERED_SHARE);
    return plain ? { ...question, circuit: unlettered(question.circuit) } : question;
  }
  return undefined;
}

/** What keeps a question from having exactly one right answer; empty when nothing does. For questions that people write. */
export const checkQuestion = (question: Question): readonly Problem[] =>
  kindOf(question.kind).check(question, rightSolver());

/** What the question has to say. It doesn't depend on the right answer. */
export const askQuestion = (question: Question): QuestionSaid => kindOf(question.kind).ask(question);

/** What may be sent before the question is answered: how it was made is left out, for that makes it again. */
export const publicQuestion = (words: AskingWords, question: Question): PublicQuestion => ({
  kind: question.kind,
  circuit: question.circuit,
  scenario: question.scenario,
  asked: tellQuestion(words, askQuestion(question)),
});

/**
 * The right answer.
 *
 * @throws RangeError when the question has none; `checkQuestion` tells why, and is asked where questions come in
 */
export function rightAnswer(question: Question): Answer {
  const answer = kindOf(question.kind).answerBy(question, rightSolver().solve);
  if (!answer) throw new RangeError('the question has no right answer');
  return answer;
}

/** An answer in which nothing is answered: it earns nothing. */
export const blankAnswer = (question: Question): Answer => kindOf(question.kind).blank;

/** Reads an answer typed in a language. Forgiving; what it can't make out it says, all of it at once. */
export const readAnswer = (words: Words, question: Question, text: string): Checked<Answer> =>
  readerOf(question.kind)(question, text, words);

/** Seconds that somebody who can do it takes, reading included. */
export const secondsExpected = (question: Question): number =>
  kindOf(question.kind).secondsExpected(question);

/** The greatest chance of somebody who doesn't read the drawing to get all of it right. */
export const luckWith = (question: Question): number => kindOf(question.kind).luck(question);

/** The circuit and what is done to it, as they are shown with the mark: with the right answer carried out. */
export function shownWithMark(question: Question): {
  readonly circuit: Circuit;
  readonly scenario: Scenario;
} {
  const { circuit, scenario } = question;
  return kindOf(question.kind).shownWith?.(question, rightAnswer(question)) ?? { circuit, scenario };
}

/** What is asked, as loads to pick out: `2 -H1` of a sequence is -H1. */
export const loadsAsked = (question: Question, items: readonly string[]): string[] => [
  ...new Set(kindOf(question.kind).loads?.(question) ?? items.map((item) => item.split(' ').at(-1)!)),
];

/** Whether a draft may be asked about in one of the kinds, and one of those things happens; known before anything is solved. */
export const mayAsk =
  (kinds: readonly QuestionKind[], happens?: readonly Happening[]) =>
  (draft: Draft): boolean =>
    kinds.some((kind) => {
      const { suits, asksCourse = false, takesAway = false } = KINDS[kind];
      const happened = takesAway && happens?.includes('loss');
      return (suits?.(draft) ?? true) && (happened || oneHappens(happens, draft, asksCourse));
    });

/** Whether every one of these kinds asks how things stand after each act. */
export const askCourse = (kinds: readonly QuestionKind[]): boolean =>
  kinds.every((kind) => KINDS[kind].asksCourse ?? false);

/** Whether none of these kinds minds a drawing as it was found. */
export const mayBeAsFound = (kinds: readonly QuestionKind[]): boolean =>
  kinds.every((kind) => !KINDS[kind].asksWhatIsMeant);

/** Whether questions of a kind ask about another circuit than the draft's. */
export const changesCircuit = (kind: QuestionKind): boolean => KINDS[kind].changesCircuit ?? false;

/** Lamps, inputs and relays that make a question hard; undefined where the whole drawing does. */
export const itemsCounted = (question: Question): ReadonlySet<string> | undefined =>
  kindOf(question.kind).counted?.(question);
