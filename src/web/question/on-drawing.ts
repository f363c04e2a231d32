/** How a question is answered on its drawing: what can be touched there, and what a touch changes. */
import type { Asked, AskedItem, ToldPart } from '../../../shared/question.ts';
import type { Touchable } from '../parts/touchable.ts';
import type { Chosen } from './answer.ts';

/** Under which the first terminal of a pair stands while the second is looked for. */
const FIRST = 'first';

/** A relay is answered at its coil, not at each of its contacts. */
const PLACES = ['load', 'coil', 'input', 'terminal'] as const;

/** Moments at which things are asked, by how many acts have been done; empty where only the end is asked for. */
export const momentsAsked = ({ items }: Asked): readonly number[] => [
  ...new Set(items.flatMap(({ after }) => after ?? [])),
];

/** The first moment that isn't answered yet, or the last one. */
export function openMoment(asked: Asked, chosen: Chosen): number | undefined {
  const moments = momentsAsked(asked);
  const isOpen = (moment: number): boolean =>
    asked.items.some(({ item, after }) => after === moment && !chosen.has(item));
  return moments.find(isOpen) ?? moments.at(-1);
}

/** Where on the drawing an item is answered. */
const placeOf = ({ about }: AskedItem): string => about[0] ?? '';

/** What is asked at a place at one moment, or at all where there are no moments. */
export const askedAt = ({ items }: Asked, place: string, moment: number | undefined): AskedItem | undefined =>
  items.find((item) => item.after === moment && placeOf(item) === place);

type Pair = readonly [string, string];

const pairOf = (value: string): Pair => {
  const [one = '', other = ''] = value.split(' ');
  return [one, other];
};

const joins = ([one, other]: Pair, first: string, second: string): boolean =>
  (one === first && other === second) || (one === second && other === first);

/** The terminals that two loose ends are on, as far as they have been chosen. */
export function wiredTo({ items }: Asked, chosen: Chosen): readonly string[] {
  const [item] = items;
  const value = item && chosen.get(item.item);
  if (value) return pairOf(value);
  const first = chosen.get(FIRST);
  return first ? [first] : [];
}

/** The conductors that have been laid: from the first loose end, and to the second. */
export function conductorsLaid(asked: Asked, chosen: Chosen): readonly (readonly [string, string])[] {
  if (asked.form !== 'choice') return [];
  const ends = asked.items[0]?.about ?? [];
  return wiredTo(asked, chosen).map((terminal, at) => [ends[at] ?? '', terminal] as const);
}

type Change = readonly (readonly [string, string])[];

/** What choosing a terminal changes; the second one must make a choice together with the first. */
function wire(asked: Asked, chosen: Chosen, terminal: string): Change {
  const [item] = asked.items;
  if (!item) return [];
  const [first, second] = wiredTo(asked, chosen);
  if (second === undefined && first === terminal) return [[FIRST, '']];
  const value =
    second === undefined && first !== undefined
      ? item.values.find((pair) => joins(pairOf(pair), first, terminal))
      : undefined;
  return value !== undefined
    ? [[item.item, value]]
    : [
        [item.item, ''],
        [FIRST, terminal],
      ];
}

/** What a touch changes: the terminal chosen, or the state of what is there, one further. */
export function touched(asked: Asked, chosen: Chosen, place: string, moment: number | undefined): Change {
  if (asked.form === 'choice') return wire(asked, chosen, place);
  const item = askedAt(asked, place, moment);
  if (!item) return [];
  const { values } = item;
  const now = chosen.get(item.item);
  const next = values[now === undefined ? 0 : (values.indexOf(now) + 1) % values.length];
  return next === undefined ? [] : [[item.item, next]];
}

/** Terminals of a pair that can be chosen as things stand. */
function terminalsOpen({ items }: Asked, wired: readonly string[]): Set<string> {
  const [first, second] = wired;
  const pairs = (items[0]?.values ?? []).map(pairOf);
  const open =
    first !== undefined && second === undefined ? pairs.filter((pair) => pair.includes(first)) : pairs;
  return new Set(open.flat());
}

/** What can be touched, by its place on the drawing. Nothing where a number is asked. */
export function touchableOf(
  asked: Asked,
  chosen: Chosen,
  moment: number | undefined,
  parts: ReadonlyMap<string, ToldPart> | undefined,
): ReadonlyMap<string, Touchable> {
  const touch = (item: AskedItem): [string, Touchable] => {
    const part = parts?.get(item.item);
    const state = chosen.get(item.item);
    const shown = state === undefined ? undefined : item.choices[item.values.indexOf(state)];
    return [placeOf(item), { label: item.label, state, shown, at: PLACES, ...(part ? { mark: part } : {}) }];
  };
  switch (asked.form) {
    case 'reading':
      return new Map();
    case 'choice': {
      // What was right is drawn, and a step of the explanation points at it.
      if (parts) return new Map();
      const wired = wiredTo(asked, chosen);
      return new Map(
        [...terminalsOpen(asked, wired)].map((terminal) => {
          const at = wired.indexOf(terminal);
          return [terminal, { label: terminal, state: at < 0 ? undefined : `${at + 1}` }];
        }),
      );
    }
    case 'states':
      return new Map(asked.items.filter(({ after }) => after === moment).map(touch));
  }
}
