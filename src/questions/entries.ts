/** Questions that ask how several things stand: what each of them asks for, one by one. */
import type { AnswerOf, QuestionOf } from '../../shared/question.ts';
import { actSaid } from '../circuit/index.ts';
import type { Moment, StateName } from '../words/index.ts';
import { type ItemKind, itemKind, liveState, namedItem, offered, stateOf } from './items.ts';
import type { ItemSaid } from './said.ts';
import type { Solve } from './solving.ts';

export type StatesKind = 'lamp-states' | 'input-states' | 'relay-states' | 'sequence' | 'still-live';
export type StatesQuestion = QuestionOf<StatesKind>;
export type StatesAnswer = AnswerOf<StatesKind>;

/** One thing asked: an item at one point of the scenario. */
export interface Entry {
  /** Key in the answer's `states`. */
  readonly key: string;
  readonly item: string;
  readonly kind: ItemKind;
  /** How many acts have been done. */
  readonly after: number;
  readonly choices: readonly StateName[];
}

const named = (question: StatesQuestion): readonly { key: string; item: string; after: number }[] => {
  const all = question.scenario.acts.length;
  return question.kind === 'sequence'
    ? question.asked.map(({ after, item }) => ({ key: `${after} ${item}`, item, after }))
    : question.asked.map((item) => ({ key: item, item, after: all }));
};

/** What is asked and the circuit has; `strayItems` are the others. */
export function entriesOf(question: StatesQuestion): readonly Entry[] {
  const { circuit, scenario, kind } = question;
  const choices = new Map<ItemKind, readonly StateName[]>();
  const choicesOf = (what: ItemKind): readonly StateName[] => {
    const known = choices.get(what);
    if (known) return known;
    const made = offered(what, circuit, scenario);
    choices.set(what, made);
    return made;
  };
  return named(question).flatMap(({ key, item, after }) => {
    const what = kind === 'still-live' ? 'terminal' : itemKind(circuit, item);
    return what ? [{ key, item, after, kind: what, choices: choicesOf(what) }] : [];
  });
}

/** How everything asked stands for whoever solves it so; undefined where that comes to nothing. */
export function statesBy(question: StatesQuestion, solve: Solve): Record<string, StateName> | undefined {
  const { circuit, scenario } = question;
  const entries = entriesOf(question);
  const states: Record<string, StateName> = {};
  for (const after of new Set(entries.map((entry) => entry.after))) {
    const acts = scenario.acts.slice(0, after);
    const standpoint = solve(
      circuit,
      acts.length === scenario.acts.length ? scenario : { ...scenario, acts },
    );
    if (!standpoint) return undefined;
    for (const entry of entries) {
      if (entry.after !== after) continue;
      states[entry.key] =
        entry.kind === 'terminal' ? liveState(standpoint, entry.item) : stateOf(standpoint, entry.item);
    }
  }
  return states;
}

/** The point of the scenario after so many acts. */
export function momentAt({ circuit, scenario }: StatesQuestion, after: number): Moment {
  const act = scenario.acts[after - 1];
  return act ? { after, act: actSaid(act, circuit) } : { after };
}

export const itemsOf = (question: StatesQuestion): ItemSaid[] =>
  entriesOf(question).map(({ key, item, after, choices }) => {
    const named = namedItem(question.circuit, item);
    return {
      item: key,
      label:
        question.kind === 'sequence'
          ? { says: 'itemAfter', moment: momentAt(question, after), item: named }
          : { says: 'item', ...named },
      choices: choices.map((says) => ({ says })),
      about: [item],
    };
  });
