/** How a standing reads: its outcome, and what can be read off it. */
import type { Outcome } from '../../shared/solution.ts';
import type { Ending } from './endings.ts';
import { flashing, isFlashing } from './flashing.ts';
import type { Machine } from './machine.ts';
import type { Standing } from './outcomes.ts';
import { type Readings, readState } from './readings.ts';
import { changingIn, readResting, readRound } from './round.ts';
import type { State } from './state.ts';

export interface ReadOutcome {
  readonly outcome: Outcome;
  readonly readings: Readings;
  readonly state: State;
}

/** What is the same all through the states of an ending; `undefined` where it changes. */
const throughout = <T>({ states }: Ending, read: (state: State) => T): T | undefined => {
  const first = read(states[0]!);
  return states.every((state) => read(state) === first) ? first : undefined;
};

/**
 * Endings that differ in what somebody could wait for. Of those that never rest only what stays in them counts: in which
 * step relays chase each other makes no other ending.
 */
function waysOf(machine: Machine, endings: readonly Ending[]): readonly Ending[] {
  if (endings.length < 2) return endings;
  const ways = new Map<string, Ending>();
  for (const ending of endings) {
    const { supplyOn, held } = ending.states[0]!;
    const stays = machine.plan.mechanisms.map((_, index) =>
      [
        throughout(ending, ({ at }) => at[index]),
        throughout(ending, ({ due, now }) =>
          due[index] === Infinity ? Infinity : Math.round((due[index]! - now) * 1e6),
        ),
      ].join('@'),
    );
    ways.set([...stays, ending.states.length > 1, supplyOn, held].join(' '), ending);
  }
  return [...ways.values()];
}

/** Mechanisms that stand otherwise in one way than in another. */
function decidedByRace(machine: Machine, ways: readonly Ending[]): string[] {
  const differ = (read: (state: State, index: number) => number) =>
    machine.plan.mechanisms.filter(
      (_, index) => new Set(ways.map((way) => throughout(way, (state) => read(state, index)))).size > 1,
    );
  const moved = differ(({ at }, index) => at[index]!);
  return (moved.length > 0 ? moved : differ(({ due }, index) => due[index]!)).map(({ id }) => id);
}

interface Out {
  readonly devices: string[];
  readonly supplies: string[];
}

/** Protective devices and supplies that a short circuit has put out and nobody has closed or restored since. */
function stillOut(machine: Machine, states: readonly State[]): Out {
  const { mechanisms, switches, supplies } = machine.plan;
  const devices = new Set<string>();
  const lost = new Set<string>();
  for (const { at, tripped, shorted, supplyOn } of states) {
    for (const index of tripped) {
      const closed = switches.find(({ mechanism }) => mechanism === index)!.closedIn[0]!;
      if (at[index] !== 1 << closed) devices.add(mechanisms[index]!.id);
    }
    for (const index of shorted) if (!supplyOn[index]) lost.add(supplies[index]!.name);
  }
  return { devices: [...devices], supplies: [...lost] };
}

const besides = (out: Out): { out?: Out } => (out.devices.length + out.supplies.length > 0 ? { out } : {});

/**
 * Tells how a standing reads. `nominal` is the state reached by moving in waves, shown where there are several ways, or
 * where they are not known.
 */
export function tell(machine: Machine, standing: Standing, nominal: State): ReadOutcome {
  const { endings } = standing;
  const all = endings.flatMap(({ states }) => states);
  const out = stillOut(machine, all);
  if (!standing.complete) {
    const moving = machine.plan.mechanisms.filter((_, index) => nominal.at[index] !== nominal.goal[index]);
    const devices = [...new Set([...changingIn(machine, all), ...moving.map(({ id }) => id)])];
    return {
      outcome: { kind: 'undecided', devices, ...besides(out) },
      readings: readResting(machine, nominal).readings,
      state: nominal,
    };
  }
  const ways = waysOf(machine, endings);
  if (ways.length > 1) {
    return {
      outcome: {
        kind: 'race',
        devices: decidedByRace(machine, ways),
        ways: ways.length,
        ...besides(out),
      },
      readings: readState(machine, nominal),
      state: nominal,
    };
  }
  const state = all[0]!;
  const round = all.length > 1 ? all : isFlashing(machine, state) ? flashing(machine, state) : [];
  if (round.length > 1) {
    const { changing, readings } = readRound(machine, round);
    return { outcome: { kind: 'keeps-switching', devices: changing, ...besides(out) }, readings, state };
  }
  const readings = readState(machine, state);
  if (out.devices.length + out.supplies.length > 0)
    return { outcome: { kind: 'protection-tripped', ...out }, readings, state };
  return { outcome: { kind: 'steady' }, readings, state };
}
