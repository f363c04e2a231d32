/** Questions that ask how several things stand: what each of them asks for, one by one. */
import type { AnswerOf, Question } from '../../shared/question.ts';
import { actSaid } from '../circuit/index.ts';
import type { Moment, StateName } from '../words/index.ts';
import { type ItemKind, itemKind, liveState, namedItem, offered, stateOf } from './items.ts';
import type { ItemSaid } from './said.ts';
import type { Solve } from './solving.ts';

/** A question that asks for things by name, in the end or after some of the acts. */
export type StatesQuestion = Extract<Question, { asked: readonly unknown[] }>;
export type StatesKind = StatesQuestion['kind'];
export type StatesAnswer = AnswerOf<StatesKind>;

/** What a kind asks for, where the names alone don't tell: `-A1:I2` is an input, and a terminal. */
const ASKS_FOR: { readonly [K in StatesKind]?: ItemKind } = { 'still-live': 'terminal' };

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

interface AskedOf {
  readonly key: string;
  readonly item: string;
  readonly after: number;
}

/** Whether things are asked for at several moments, and not in the end alone. */
export const byMoments = ({ asked }: StatesQuestion): boolean =>
  asked.some((each) => typeof each !== 'string');

/** Everything asked, whether the circuit has it or not. */
export const askedOf = ({ asked, scenario }: StatesQuestion): readonly AskedOf[] =>
  asked.map((each) =>
    typeof each === 'string'
      ? { key: each, item: each, after: scenario.acts.length }
      : { key: `${each.after} ${each.item}`, ...each },
  );

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
  return askedOf(question).flatMap(({ key, item, after }) => {
    const what = ASKS_FOR[kind] ?? itemKind(circuit, item);
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

export function itemsOf(question: StatesQuestion): ItemSaid[] {
  const moments = byMoments(question);
  return entriesOf(question).map(({ key, item, after, choices }) => {
    const named = namedItem(question.circuit, item);
    return {
      item: key,
      label: moments
        ? { says: 'itemAfter', moment: momentAt(question, after), item: named }
        : { says: 'item', ...named },
      choices: choices.map((says) => ({ says })),
      about: [item],
    };
  });
}
