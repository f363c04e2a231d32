/**
 * How a question is solved: rightly, or as somebody with a misconception would. A kind asks a solver and doesn't know which
 * of them it is, so the right answer and every wrong one come about in the same way.
 */
import type { Circuit } from '../../shared/circuit.ts';
import type { Scenario } from '../../shared/scenario.ts';
import { type Misconception, predict, viewOf } from '../misconceptions/index.ts';
import {
  begin,
  everyBeginning,
  everyOutcome,
  isFlashing,
  type Machine,
  machineOf,
  planOf,
  play,
  type Readings,
  readState,
  type Standing,
  type State,
  tell,
} from '../solver/index.ts';

/** Where a scenario ends. */
export interface Standpoint {
  readonly machine: Machine;
  readonly state: State;
  /** What can be read; where a flasher runs, what follows it flashes or changes. */
  readonly readings: Readings;
  /** Mechanisms that never rest. */
  readonly changing: readonly string[];
}

/** Undefined: it comes to nothing that could be asked about. */
export type Solve = (circuit: Circuit, scenario: Scenario) => Standpoint | undefined;

export function standpointOf(machine: Machine, state: State): Standpoint {
  if (!isFlashing(machine, state))
    return { machine, state, readings: readState(machine, state), changing: [] };
  const { outcome, readings } = tell(machine, { endings: [{ states: [state] }], complete: true }, state);
  return {
    machine,
    state,
    readings,
    changing: outcome.kind === 'keeps-switching' ? outcome.devices : [],
  };
}

export interface Solver {
  readonly solve: Solve;
  /** The machine of a circuit with a scenario's faults, compiled once while the same circuit is asked about. */
  readonly machine: (circuit: Circuit, scenario: Scenario) => Machine;
}

/** Solves as things are, mechanisms moving in waves; `certain` tells whether that is the only way it can end. */
export function rightSolver(): Solver {
  let kept: { circuit: Circuit; faults: Scenario['faults']; machine: Machine } | undefined;
  const machine = (circuit: Circuit, { faults, start }: Scenario): Machine => {
    if (kept?.circuit === circuit && kept.faults === faults) return kept.machine;
    const made = machineOf(planOf(circuit, faults));
    begin(made, start);
    kept = { circuit, faults, machine: made };
    return made;
  };
  const solve = (circuit: Circuit, scenario: Scenario): Standpoint => {
    const made = machine(circuit, scenario);
    return standpointOf(made, play(made, scenario).state);
  };
  return { solve, machine };
}

/** Solves as somebody with a misconception; where it makes no difference, as things are. */
export function wrongSolve(misconception: Misconception, right: Solver): Solve {
  return (circuit, scenario) => {
    const machine = right.machine(circuit, scenario);
    if (!viewOf(misconception, circuit, scenario, machine.plan)) return right.solve(circuit, scenario);
    const wrong = predict(misconception, circuit, scenario, machine);
    return wrong && standpointOf(wrong.machine, wrong.state);
  };
}

/** One way to end, in one state, whatever the order in which the mechanisms move; a running flasher may go on. */
const isCertain = ({ endings, complete }: Standing): boolean =>
  complete && endings.length === 1 && endings[0]!.states.length === 1;

/** Whether a scenario, and each act on the way, ends in one way under every order of operation. */
export function certain(machine: Machine, scenario: Pick<Scenario, 'start' | 'acts'>): boolean {
  let standing = everyBeginning(machine, scenario.start);
  for (const act of scenario.acts) {
    if (!isCertain(standing)) return false;
    standing = everyOutcome(machine, standing, act);
  }
  return isCertain(standing);
}
