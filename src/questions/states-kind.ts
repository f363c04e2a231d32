/** What all kinds have in common that ask how several things stand. */
import { compareStates } from './answer/compare-states.ts';
import { situationOf } from './ask/situation.ts';
import { checkStates } from './check-states.ts';
import {
  byMoments,
  entriesOf,
  itemsOf,
  type StatesAnswer,
  type StatesKind,
  type StatesQuestion,
  statesBy,
} from './entries.ts';
import type { Kind } from './kind.ts';
import { luckWithStates } from './luck.ts';
import type { KindSaid, QuestionSaid } from './said.ts';
import { timeFor } from './time-expected.ts';

type QuestionFor<K extends StatesKind> = Extract<StatesQuestion, { kind: K }>;

interface Wording<K extends StatesKind> {
  readonly task: (question: QuestionFor<K>) => KindSaid<K>;
  readonly how: (question: QuestionFor<K>) => KindSaid<K>;
  readonly cautions?: (question: QuestionFor<K>) => QuestionSaid['cautions'];
}

/** How an answer is typed: with its state, or those that are `yes` and the others `no`. */
export function yesAndNo(question: StatesQuestion) {
  const [yes, no] = entriesOf(question)[0]!.choices;
  return { says: 'how', yes: { says: yes! }, no: { says: no! } } as const;
}

/** A kind but for its `propose`. */
export function statesKind<K extends StatesKind>(
  kind: K,
  { task, how, cautions = () => [] }: Wording<K>,
): Omit<Kind<K>, 'propose'> {
  const answerOf = (states: Record<string, string>) =>
    ({ kind, states }) as Extract<StatesAnswer, { kind: K }>;
  const built = {
    kind,
    blank: answerOf({}),
    check: checkStates,
    ask: (question: QuestionFor<K>): QuestionSaid => ({
      kind,
      form: 'states',
      situation: situationOf(question.circuit, question.scenario, byMoments(question)),
      besides: [],
      task: task(question),
      how: how(question),
      items: itemsOf(question),
      cautions: cautions(question),
    }),
    answerBy(question: QuestionFor<K>, solve: Parameters<Kind<K>['answerBy']>[1]) {
      const states = statesBy(question, solve);
      return states && answerOf(states);
    },
    parts: compareStates,
    luck: ({ asked }: QuestionFor<K>): number => luckWithStates(asked.length),
    secondsExpected: (question: QuestionFor<K>): number =>
      timeFor(question.circuit, question.scenario, question.asked.length),
  };
  return built as unknown as Omit<Kind<K>, 'propose'>;
}
