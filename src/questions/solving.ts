/**
 * How a question is solved: rightly, or as somebody with a misconception would. A kind asks a solver and doesn't know which
 * of them it is, so the right answer and every wrong one come about in the same way.
 */
import type { Circuit } from '../../shared/circuit.ts';
import type { Scenario } from '../../shared/scenario.ts';
import { type Misconception, predictor } from '../misconceptions/index.ts';
import {
  begin,
  everyBeginning,
  everyOutcome,
  type Machine,
  machineOf,
  planOf,
  play,
  type Readings,
  readResting,
  type Standing,
  type State,
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

export const standpointOf = (machine: Machine, state: State): Standpoint => ({
  machine,
  state,
  ...readResting(machine, state),
});

export interface Solver {
  readonly solve: Solve;
  /** The machine of a circuit with a scenario's faults, compiled once while the same circuit is asked about. */
  readonly machine: (circuit: Circuit, scenario: Scenario) => Machine;
}

/** Circuits whose machines one solver keeps; a wiring question has one for each choice. */
const MOST_KEPT = 16;

interface Kept {
  readonly faults: Scenario['faults'];
  readonly machine: Machine;
  readonly standpoints: Map<string, Standpoint>;
}

/**
 * Solves as things are, mechanisms moving in waves; `certain` tells whether that is the only way it can end. It remembers
 * what it has solved, so one belongs to one question.
 */
export function rightSolver(): Solver {
  const kept = new Map<Circuit, Kept>();
  const keptFor = (circuit: Circuit, { faults, start }: Scenario): Kept => {
    const known = kept.get(circuit);
    if (known?.faults === faults) return known;
    const machine = machineOf(planOf(circuit, faults));
    // Once run it has worked out what wrong machines take over from it.
    begin(machine, start);
    const made: Kept = { faults, machine, standpoints: new Map() };
    if (kept.size >= MOST_KEPT) kept.clear();
    kept.set(circuit, made);
    return made;
  };
  const solve = (circuit: Circuit, scenario: Scenario): Standpoint => {
    const { machine, standpoints } = keptFor(circuit, scenario);
    const key = JSON.stringify([scenario.start, scenario.acts]);
    const known = standpoints.get(key);
    if (known) return known;
    const made = standpointOf(machine, play(machine, scenario).state);
    standpoints.set(key, made);
    return made;
  };
  return { solve, machine: (circuit, scenario) => keptFor(circuit, scenario).machine };
}

/** Solves as somebody with a misconception; where it makes no difference, as things are. */
export function wrongSolve(misconception: Misconception, right: Solver): Solve {
  const kept = new Map<Machine, ReturnType<typeof predictor>>();
  return (circuit, scenario) => {
    const machine = right.machine(circuit, scenario);
    const foretell = kept.get(machine) ?? predictor(misconception, circuit, machine);
    kept.set(machine, foretell);
    const foretold = foretell(scenario);
    switch (foretold.kind) {
      case 'no-difference':
        return right.solve(circuit, scenario);
      case 'no-answer':
        return undefined;
      case 'prediction':
        return standpointOf(foretold.prediction.machine, foretold.prediction.state);
    }
  };
}

/** One way to end, in one state, whatever the order in which the mechanisms move; a running flasher may go on. */
const isCertain = ({ endings, complete }: Standing): boolean =>
  complete && endings.length === 1 && endings[0]!.states.length === 1;

const known = new WeakMap<Machine, Map<string, boolean>>();

/**
 * Whether a scenario, and each act on the way, ends in one way under every order of operation. Worked out once: who proposes a
 * question needs it, and who checks it.
 */
export function certain(machine: Machine, { start, acts }: Pick<Scenario, 'start' | 'acts'>): boolean {
  const answers = known.get(machine) ?? new Map<string, boolean>();
  known.set(machine, answers);
  const key = JSON.stringify([start, acts]);
  const before = answers.get(key);
  if (before !== undefined) return before;
  const answer = everyWayIsOne(machine, { start, acts });
  answers.set(key, answer);
  return answer;
}

function everyWayIsOne(machine: Machine, scenario: Pick<Scenario, 'start' | 'acts'>): boolean {
  let standing = everyBeginning(machine, scenario.start);
  for (const act of scenario.acts) {
    if (!isCertain(standing)) return false;
    standing = everyOutcome(machine, standing, act);
  }
  return isCertain(standing);
}
