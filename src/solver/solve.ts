import type { Circuit } from '../../shared/circuit.ts';
import type { Act, Scenario } from '../../shared/scenario.ts';
import type { InputState, LampState, Outcome, Solution } from '../../shared/solution.ts';
import { timeOut } from './coils.ts';
import { DRIVE, type Machine, machineOf } from './machine.ts';
import { everyBeginning, everyOutcome, isFlashing, type Standing } from './outcomes.ts';
import type { Plan } from './plan.ts';
import { planOf } from './plan-of.ts';
import { play } from './play.ts';
import { type Readings, readState } from './readings.ts';
import { runTimed } from './run.ts';
import { settleAfter } from './settle.ts';
import { copyState, type State } from './state.ts';
import { advance, nextDue } from './time.ts';
import { traceAll } from './trace.ts';

/** Changes of flashers looked at to tell what flashes with them. */
const FLASHES = 32;

/** Some of the states that follow one another when flashers run: each running flasher is seen in both its spans. */
function flashing(machine: Machine, state: State): State[] {
  const states = [state];
  const run = (from: State, changes: number): void => {
    const at = copyState(from);
    at.firings = 0;
    for (let change = 0; change < changes; change++) {
      const next = nextDue(at);
      if (next === Infinity) break;
      advance(machine, at, next - at.now);
      states.push(copyState(at));
    }
  };
  run(state, FLASHES);
  // Beside a quick one a slow one may not have changed in that time: it is brought to its change at once.
  for (let mechanism = 0; mechanism < machine.mechanisms; mechanism++) {
    const { due } = state;
    if (due[mechanism] === Infinity || machine.drive[mechanism] !== DRIVE.flasher) continue;
    const slow = states.every(({ at }) => at[mechanism] === state.at[mechanism]);
    if (!slow) continue;
    const changed = copyState(state);
    timeOut(machine, changed, mechanism);
    settleAfter(machine, changed, [mechanism]);
    states.push(changed);
    run(changed, FLASHES / 4);
  }
  return states;
}

const mechanismsThatDiffer = (machine: Machine, states: readonly State[]): string[] => {
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

/** Protective devices and supplies that a short circuit has put out and nobody has closed or restored since. */
function stillOut(machine: Machine, state: State): { devices: string[]; supplies: string[] } {
  const { mechanisms, switches, supplies } = machine.plan;
  const open = (index: number): boolean => {
    const closed = switches.find(({ mechanism }) => mechanism === index)!.closedIn[0]!;
    return state.at[index] !== 1 << closed;
  };
  return {
    devices: [...new Set(state.tripped)].filter(open).map((index) => mechanisms[index]!.id),
    supplies: [...new Set(state.shorted)]
      .filter((index) => !state.supplyOn[index])
      .map((index) => supplies[index]!.name),
  };
}

interface Told {
  readonly outcome: Outcome;
  readonly readings: Readings;
  readonly state: State;
}

/** Tells how a standing reads; `nominal` is the state reached by moving in waves, shown when it is a race. */
export function tell(machine: Machine, standing: Standing, nominal: State): Told {
  const { endings } = standing;
  const [ending] = endings;
  const state = ending!.states[0]!;
  if (endings.length > 1) {
    const devices = mechanismsThatDiffer(
      machine,
      endings.flatMap(({ states }) => states),
    );
    return {
      outcome: { kind: 'race', devices, ways: endings.length },
      readings: readState(machine, nominal),
      state: nominal,
    };
  }
  const cycle =
    ending!.states.length > 1 ? ending!.states : isFlashing(machine, state) ? flashing(machine, state) : [];
  if (cycle.length > 1) {
    const devices = mechanismsThatDiffer(machine, cycle);
    const shown = cycle.slice(0, 256).map((at) => readState(machine, at));
    return { outcome: { kind: 'keeps-switching', devices }, readings: blend(shown), state };
  }
  const { devices, supplies } = stillOut(machine, state);
  if (devices.length + supplies.length > 0) {
    return {
      outcome: { kind: 'protection-tripped', devices, supplies },
      readings: readState(machine, state),
      state,
    };
  }
  return { outcome: { kind: 'steady' }, readings: readState(machine, state), state };
}

/** Steps of evaluating, some seconds of them, after which the acts that are left are not done. */
const MOST_EFFORT = 80_000_000;

export interface Solved {
  readonly solution: Solution;
  /** False when not every order of operation could be tried within the limits, or not every act be done. */
  readonly complete: boolean;
  readonly machine: Machine;
  readonly state: State;
}

/** Solves a plan (with its faults, or its misconception, in it). */
export function solvePlan(
  plan: Plan,
  scenario: Pick<Scenario, 'start' | 'acts'>,
  words?: (act: Act) => string,
): Solved {
  const machine = machineOf(plan);
  let standing = everyBeginning(machine, scenario.start);
  const done: Act[] = [];
  for (const act of scenario.acts) {
    if (machine.effort.steps > MOST_EFFORT) break;
    standing = everyOutcome(machine, standing, act);
    done.push(act);
  }
  // What moving in waves gives is shown of a race.
  const nominal = standing.endings.length > 1 ? play(machine, { ...scenario, acts: done }).state : undefined;
  const { outcome, readings, state } = tell(machine, standing, nominal ?? standing.endings[0]!.states[0]!);
  const { happenings } = runTimed(machine, scenario, words);
  const solution: Solution = {
    outcome,
    ...readings,
    steps: [...happenings],
    trace: traceAll(machine, state),
  };
  const complete = standing.complete && done.length === scenario.acts.length;
  return { solution, complete, machine, state };
}

/**
 * Solves a circuit: what holds after the scenario's acts, whether that is certain, what happened on the way, and why each
 * load is in its state.
 */
export const solve = (circuit: Circuit, scenario: Scenario, words?: (act: Act) => string): Solved =>
  solvePlan(planOf(circuit, scenario.faults), scenario, words);
