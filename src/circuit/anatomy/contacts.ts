import type { ContactSpec } from '../../../shared/circuit.ts';
import type { Contact } from './types.ts';

interface Placing {
  readonly mechanism: number;
  readonly pole: number;
  readonly main?: boolean;
  /** All position names of the mechanism; two for everything but a selector. */
  readonly positions: readonly string[];
}

/**
 * Of the poles that every device of a kind has alike, the contacts as they were last placed: most devices are relays, and theirs
 * come again and again. Without an entry: the specification is one device's own.
 */
const lastPlaced = new WeakMap<ContactSpec, { placing: Placing; contacts: readonly Contact[] } | undefined>();

const isSame = (one: Placing, other: Placing): boolean =>
  one.pole === other.pole &&
  one.positions === other.positions &&
  one.main === other.main &&
  one.mechanism === other.mechanism;

/** The contacts of one contact specification. */
export function contactsOf(spec: ContactSpec, placing: Placing): readonly Contact[] {
  const last = lastPlaced.get(spec);
  if (last && isSame(last.placing, placing)) return last.contacts;
  const contacts = placed(spec, placing);
  if (lastPlaced.has(spec)) lastPlaced.set(spec, { placing, contacts });
  return contacts;
}

/**
 * A make is closed in the operated position, a break at rest; with named
 * positions (selectors) a make is closed in those and a break in all others.
 */
function placed(spec: ContactSpec, { mechanism, pole, main = false, positions }: Placing): Contact[] {
  const all = positions.map((_, index) => index);
  const named = spec.positions?.map((name) => positions.indexOf(name)).filter((index) => index >= 0);
  const actuated = named ?? all.slice(1);
  const resting = all.filter((index) => !actuated.includes(index));
  const [first = '', second = '', third = ''] = spec.terminals;
  const part = { mechanism, pole, main, changeover: spec.form === 'changeover' };
  const make = (from: string, to: string): Contact => ({
    ...part,
    from,
    to,
    closedIn: actuated,
    form: 'make',
  });
  const rest = (from: string, to: string): Contact => ({
    ...part,
    from,
    to,
    closedIn: resting,
    form: 'break',
  });
  switch (spec.form) {
    case 'make':
      return [make(first, second)];
    case 'break':
      return [rest(first, second)];
    case 'changeover':
      return [rest(first, second), make(first, third)];
  }
}

/** Lists of specifications, each made once, so that whatever is worked out of one is worked out once. */
const lists = new Map<string, readonly ContactSpec[]>();

function listOf(key: string, poles: number, make: (index: number) => ContactSpec): readonly ContactSpec[] {
  const before = lists.get(key);
  if (before) return before;
  const list = Array.from({ length: poles }, (_, index) => make(index));
  for (const spec of list) lastPlaced.set(spec, undefined);
  lists.set(key, list);
  return list;
}

/** Changeover poles by EN 50005: common 1, break leg 2, make leg 4; timers 5, 6 and 8 (delayed). */
export const changeoverPoles = (poles: number, delayed = false): readonly ContactSpec[] =>
  listOf(`changeover ${poles} ${delayed}`, poles, (index) => ({
    form: 'changeover',
    terminals: (delayed ? ['5', '6', '8'] : ['1', '2', '4']).map((digit) => `${index + 1}${digit}`),
  }));

/** Main poles 1-2, 3-4, 5-6, 7-8. */
export const mainPoles = (poles: number, form: 'make' | 'break' = 'make'): readonly ContactSpec[] =>
  listOf(`${form} ${poles}`, poles, (index) => ({
    form,
    terminals: [String(2 * index + 1), String(2 * index + 2)],
  }));

/** Every terminal of a list of contact specifications, in order. */
export const terminalsOf = (specs: readonly ContactSpec[]): string[] =>
  specs.flatMap((spec) => spec.terminals);
