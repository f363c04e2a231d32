/** What can be read off a drawing in one state: every lamp, input and relay that it is about. */
import { inputStateAt, lampStateAt, type Machine, type State, tell } from '../solver/index.ts';
import type { Draft } from './types.ts';

/** States in the order of the draft's lists. */
export interface Picture {
  readonly lamps: readonly string[];
  readonly inputs: readonly string[];
  readonly relays: readonly string[];
}

type Asked = Pick<Draft, 'lamps' | 'inputs' | 'relays'>;

/** Where the items asked about are in a machine, and in every variant of it. */
export interface Places {
  readonly lamps: readonly number[];
  readonly inputs: readonly number[];
  readonly relays: readonly number[];
}

export function placesIn({ plan, mechanismOf }: Machine, asked: Asked): Places {
  const loadOf = new Map(plan.loads.map(({ id }, index) => [id, index]));
  return {
    lamps: asked.lamps.map((id) => loadOf.get(id)!),
    inputs: asked.inputs.map((id) => loadOf.get(id)!),
    relays: asked.relays.map((id) => mechanismOf.get(id)!),
  };
}

/** Reads a state that rests. */
export function pictureOf(machine: Machine, state: State, places: Places): Picture {
  return {
    lamps: places.lamps.map((load) => lampStateAt(machine, state, load)),
    inputs: places.inputs.map((load) => inputStateAt(machine, state, load)),
    relays: places.relays.map((mechanism) => (state.at[mechanism] === 2 ? 'operated' : 'rest')),
  };
}

/** Reads a state in which a flasher runs: what goes on and off with it is `flashing`, an input `changing`. */
export function flashingPicture(machine: Machine, state: State, asked: Asked): Picture {
  const standing = { endings: [{ states: [state] }], complete: true };
  const { outcome, readings } = tell(machine, standing, state);
  const flashing = new Set(outcome.kind === 'keeps-switching' ? outcome.devices : []);
  return {
    lamps: asked.lamps.map((id) => readings.lamps[id]!),
    inputs: asked.inputs.map((id) => readings.inputs[id]!),
    relays: asked.relays.map((id) =>
      flashing.has(id) ? 'flashing' : readings.coils[id]!.operated ? 'operated' : 'rest',
    ),
  };
}

/** Lamps and inputs as one text, to compare by. */
export const loadsKey = ({ lamps, inputs }: Picture): string => `${lamps.join()} ${inputs.join()}`;
export const relaysKey = ({ relays }: Picture): string => relays.join();
