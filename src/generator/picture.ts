/** What can be read off a drawing in one state: every lamp, input and relay that it is about. */
import { advance, copyState, inputStateAt, lampStateAt, type Machine, type State } from '../solver/index.ts';
import type { Draft } from './types.ts';

/** States in the order of the draft's lists. */
export interface Picture {
  readonly lamps: readonly string[];
  readonly inputs: readonly string[];
  readonly relays: readonly string[];
}

type Asked = Pick<Draft, 'lamps' | 'inputs' | 'relays'>;

/** Where the items asked about are in a machine, and in every variant of it. */
export interface ItemIndices {
  readonly lamps: readonly number[];
  readonly inputs: readonly number[];
  readonly relays: readonly number[];
}

export function itemIndicesIn({ plan, mechanismOf }: Machine, asked: Asked): ItemIndices {
  const loadOf = new Map(plan.loads.map(({ id }, index) => [id, index]));
  return {
    lamps: asked.lamps.map((id) => loadOf.get(id)!),
    inputs: asked.inputs.map((id) => loadOf.get(id)!),
    relays: asked.relays.map((id) => mechanismOf.get(id)!),
  };
}

/** Reads a state that rests. */
export function pictureOf(machine: Machine, state: State, places: ItemIndices): Picture {
  return {
    lamps: places.lamps.map((load) => lampStateAt(machine, state, load)),
    inputs: places.inputs.map((load) => inputStateAt(machine, state, load)),
    relays: places.relays.map((mechanism) => (state.at[mechanism] === 2 ? 'operated' : 'rest')),
  };
}

/** Changes of a flasher looked at, at most. */
const MOST_CHANGES = 32;

/** The pictures of a state in which a flasher runs, until it stands as it stood before. */
function flashingPictures(machine: Machine, state: State, places: ItemIndices): Picture[] {
  const at = copyState(state);
  const seen = new Set<string>();
  const pictures: Picture[] = [];
  for (let change = 0; change < MOST_CHANGES; change++) {
    const key = at.at.join();
    if (seen.has(key)) break;
    seen.add(key);
    pictures.push(pictureOf(machine, at, places));
    const next = Math.min(...at.due);
    if (next === Infinity) break;
    advance(machine, at, next - at.now);
  }
  return pictures;
}

/** Reads a state in which a flasher runs: what goes on and off with it is `flashing`, an input `changing`. */
export function flashingPicture(machine: Machine, state: State, places: ItemIndices): Picture {
  const pictures = flashingPictures(machine, state, places);
  const [first] = pictures;
  const blend = (key: keyof Picture, word: string): string[] =>
    first![key].map((now, index) => (pictures.every((other) => other[key][index] === now) ? now : word));
  return {
    lamps: blend('lamps', 'flashing'),
    inputs: blend('inputs', 'changing'),
    relays: blend('relays', 'flashing'),
  };
}

export const differ = (one: readonly string[], other: readonly string[]): boolean =>
  one.some((state, index) => state !== other[index]);

/** Lamps and inputs as one text, to compare by. */
export const loadsKey = ({ lamps, inputs }: Picture): string => `${lamps.join()} ${inputs.join()}`;
