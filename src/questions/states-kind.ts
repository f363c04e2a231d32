/** What all kinds have in common that ask how several things stand. */
import type { Asked } from '../../shared/question.ts';
import { compareStates } from './answer/compare-states.ts';
import { situationOf } from './ask/situation.ts';
import { checkStates } from './check-states.ts';
import {
  entriesOf,
  itemsOf,
  type StatesAnswer,
  type StatesKind,
  type StatesQuestion,
  statesBy,
} from './entries.ts';
import type { Kind } from './kind.ts';
import { timeFor } from './time-expected.ts';

interface Wording<Q> {
  readonly title: string;
  readonly task: (question: Q) => string;
  readonly how: (question: Q) => string;
  readonly cautions?: (question: Q) => string[];
}

type QuestionFor<K extends StatesKind> = Extract<StatesQuestion, { kind: K }>;

/** How an answer is typed, without an example that could be the right one. */
export const howToList = (question: StatesQuestion, what: string): string => {
  const [first = { choices: ['', ''] }] = entriesOf(question);
  const [yes, no] = first.choices;
  return `Write each ${what} with its state, or the states in this order; or only those that are ${yes}: the others then count as ${no}. "None" says that of all.`;
};

/** A kind but for its `propose`. */
export function statesKind<K extends StatesKind>(
  kind: K,
  { title, task, how, cautions = () => [] }: Wording<QuestionFor<K>>,
): Omit<Kind<K>, 'propose'> {
  const answerOf = (states: Record<string, string>) =>
    ({ kind, states }) as Extract<StatesAnswer, { kind: K }>;
  const built = {
    kind,
    title,
    blank: answerOf({}),
    check: checkStates,
    ask: (question: QuestionFor<K>): Asked => ({
      title,
      situation: situationOf(question.circuit, question.scenario),
      task: task(question),
      items: itemsOf(question),
      how: how(question),
      cautions: cautions(question),
    }),
    answerBy(question: QuestionFor<K>, solve: Parameters<Kind<K>['answerBy']>[1]) {
      const states = statesBy(question, solve);
      return states && answerOf(states);
    },
    parts: compareStates,
    secondsExpected: (question: QuestionFor<K>): number =>
      timeFor(question.circuit, question.scenario, question.asked.length),
  };
  return built as unknown as Omit<Kind<K>, 'propose'>;
}
