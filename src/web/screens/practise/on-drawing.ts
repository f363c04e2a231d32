/** How a question is answered on its drawing: what can be touched there, and what a touch changes. */
import type { Asked, AskedItem, Question, ToldPart } from '../../../../shared/question.ts';
import type { Touchable } from '../../parts/drawing.tsx';

/** By item: the state chosen; of a wiring also the first of its two terminals, under `FIRST`. */
export type Chosen = ReadonlyMap<string, string>;

/** Under which the first terminal of a wiring stands while the second is looked for. */
export const FIRST = 'first';

/** A relay is answered at its coil, not at each of its contacts. */
const PLACES = ['load', 'coil', 'input', 'terminal'] as const;

/** The steps of a sequence: after how many acts, with what is asked then. `place` is where it stands on the drawing. */
export function stepsAsked({
  items,
}: Asked): ReadonlyMap<string, readonly { place: string; item: AskedItem }[]> {
  const steps = new Map<string, { place: string; item: AskedItem }[]>();
  for (const item of items) {
    const [after = '', place = ''] = item.item.split(' ');
    steps.set(after, [...(steps.get(after) ?? []), { place, item }]);
  }
  return steps;
}

/** The first step that isn't answered yet, or the last one. */
export function openStep(asked: Asked, chosen: Chosen): string {
  const steps = [...stepsAsked(asked)];
  const open = steps.find(([, items]) => items.some(({ item }) => !chosen.has(item.item)));
  return (open ?? steps.at(-1))?.[0] ?? '';
}

type Wiring = Extract<Question, { kind: 'wiring' }>;

const joins = ([one, other]: readonly [string, string], first: string, second: string): boolean =>
  (one === first && other === second) || (one === second && other === first);

/** The choice that a wiring stands at; -1 for none yet. */
export const choiceOf = (asked: Asked, chosen: Chosen): number => {
  const [item] = asked.items;
  return item ? item.values.indexOf(chosen.get(item.item) ?? '') : -1;
};

/** The terminals that a wiring's two loose conductors are on, as far as they have been chosen. */
export function wiredTo(question: Wiring, asked: Asked, chosen: Chosen): readonly string[] {
  const choice = question.choices[choiceOf(asked, chosen)];
  if (choice) return choice;
  const first = chosen.get(FIRST);
  return first ? [first] : [];
}

/** The conductors that have been laid: from the first loose end, and to the second. */
export function conductorsLaid(
  question: Question,
  asked: Asked,
  chosen: Chosen,
): readonly (readonly [string, string])[] {
  if (question.kind !== 'wiring') return [];
  return wiredTo(question, asked, chosen).map((terminal, at) => [question.ends[at]!, terminal] as const);
}

/** What choosing a terminal of a wiring changes; the second one must make a choice together with the first. */
export function wire(
  question: Wiring,
  asked: Asked,
  chosen: Chosen,
  terminal: string,
): readonly (readonly [string, string])[] {
  const [item] = asked.items;
  if (!item) return [];
  const wired = wiredTo(question, asked, chosen);
  const [first, second] = wired;
  if (second === undefined && first === terminal) return [[FIRST, '']];
  const choice =
    second === undefined && first !== undefined
      ? question.choices.findIndex((pair) => joins(pair, first, terminal))
      : -1;
  return choice >= 0
    ? [[item.item, item.values[choice] ?? '']]
    : [
        [item.item, ''],
        [FIRST, terminal],
      ];
}

/** Terminals of a wiring that can be chosen as things stand. */
function terminalsOpen(question: Wiring, wired: readonly string[]): Set<string> {
  const [first, second] = wired;
  const open =
    first !== undefined && second === undefined
      ? question.choices.filter((pair) => pair.includes(first))
      : question.choices;
  return new Set(open.flat());
}

/** What can be touched, by its place on the drawing. Nothing of a meter: it shows a number. */
export function touchableOf(
  question: Question,
  asked: Asked,
  chosen: Chosen,
  step: string,
  parts: ReadonlyMap<string, ToldPart> | undefined,
): ReadonlyMap<string, Touchable> {
  const touch = (place: string, { item, label, choices, values }: AskedItem): [string, Touchable] => {
    const part = parts?.get(item);
    const state = chosen.get(item);
    const shown = state === undefined ? undefined : choices[values.indexOf(state)];
    return [place, { label, state, shown, at: PLACES, ...(part ? { mark: part } : {}) }];
  };
  switch (question.kind) {
    case 'meter':
      return new Map();
    case 'wiring': {
      // What was right is drawn, and a step of the explanation points at it.
      if (parts) return new Map();
      const wired = wiredTo(question, asked, chosen);
      return new Map(
        [...terminalsOpen(question, wired)].map((terminal) => {
          const at = wired.indexOf(terminal);
          return [terminal, { label: terminal, state: at < 0 ? undefined : `${at + 1}` }];
        }),
      );
    }
    case 'sequence':
      return new Map((stepsAsked(asked).get(step) ?? []).map(({ place, item }) => touch(place, item)));
    default:
      return new Map(asked.items.map((item) => touch(item.item, item)));
  }
}
