/** States that follow one another without end, read as one. */
import type { InputState, LampState } from '../../shared/solution.ts';
import { flashing, isFlashing } from './flashing.ts';
import type { Machine } from './machine.ts';
import { type Readings, readState } from './readings.ts';
import type { State } from './state.ts';

export interface ReadRound {
  readonly readings: Readings;
  /** Mechanisms that never rest. */
  readonly changing: string[];
}

/** States of a round that are read; more show nothing new. */
const MOST_READ = 256;

/** Mechanisms that stand differently in some of the states. */
export const changingIn = (machine: Machine, states: readonly State[]): string[] => {
  const [first] = states;
  return machine.plan.mechanisms
    .filter((_, index) => states.some(({ at }) => at[index] !== first!.at[index]))
    .map(({ id }) => id);
};

/** Readings of several states as one: what differs between them flashes, or changes. */
function blend(all: readonly Readings[]): Readings {
  const [first] = all;
  const vary = <T extends string>(key: 'lamps' | 'loads' | 'inputs', word: T): Record<string, T> =>
    Object.fromEntries(
      Object.entries(first![key]).map(([id, now]) => [
        id,
        all.every((other) => other[key][id] === now) ? now : word,
      ]),
    ) as Record<string, T>;
  return {
    ...first!,
    lamps: vary<LampState>('lamps', 'flashing'),
    loads: vary<LampState>('loads', 'flashing'),
    inputs: vary<InputState>('inputs', 'changing'),
  };
}

/** What is read off states that come round and round. */
export const readRound = (machine: Machine, round: readonly State[]): ReadRound => ({
  readings: blend(round.slice(0, MOST_READ).map((at) => readState(machine, at))),
  changing: changingIn(machine, round),
});

/** What is read off a state in which nothing but flashers may run. */
export function readResting(machine: Machine, state: State): ReadRound {
  const round = isFlashing(machine, state) ? flashing(machine, state) : [];
  return round.length > 1 ? readRound(machine, round) : { readings: readState(machine, state), changing: [] };
}
