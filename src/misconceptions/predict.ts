import type { Circuit } from '../../shared/circuit.ts';
import type { Scenario } from '../../shared/scenario.ts';
import {
  begin,
  isFlashing,
  type Machine,
  machineOf,
  type Plan,
  planOf,
  play,
  type State,
  variantOf,
} from '../solver/index.ts';
import { MISCONCEPTIONS } from './list.ts';
import type { Misconception } from './types.ts';

/** What a circuit comes to for somebody with a misconception. */
export interface Prediction {
  readonly misconception: Misconception;
  readonly machine: Machine;
  readonly state: State;
}

/** Circuit and scenario as somebody with this idea sees them. */
export interface View {
  readonly plan: Plan;
  readonly scenario: Scenario;
}

/** Undefined when the idea makes no difference to this circuit and this scenario. */
export function viewOf(
  { changePlan, changeScenario }: Misconception,
  circuit: Circuit,
  scenario: Scenario,
  plan: Plan = planOf(circuit, scenario.faults),
): View | undefined {
  const seen = changePlan?.(plan, circuit);
  const done = changeScenario?.(scenario, circuit);
  if (seen === undefined && done === undefined) return undefined;
  return { plan: seen ?? plan, scenario: done ?? scenario };
}

/** The machine of the circuit as it is, which the wrong ones are variants of. Its start is worked out, to be shared. */
function rightMachine(circuit: Circuit, scenario: Scenario): Machine {
  const machine = machineOf(planOf(circuit, scenario.faults));
  begin(machine, scenario.start);
  return machine;
}

export type Foretold =
  /** The idea makes no difference to plan or scenario. */
  | { readonly kind: 'no-difference' }
  /**
   * The wrong machine comes to no rest, or to a short circuit that nobody who thinks so would have seen: somebody with
   * this idea has no answer.
   */
  | { readonly kind: 'no-answer' }
  | { readonly kind: 'prediction'; readonly prediction: Prediction };

/**
 * A misconception on one circuit, ready for many scenarios with the same faults: the wrong machine is compiled once.
 *
 * @param machine - the machine of the circuit with its faults
 */
export function predictor(
  misconception: Misconception,
  circuit: Circuit,
  machine: Machine,
): (scenario: Scenario) => Foretold {
  const seen = misconception.changePlan?.(machine.plan, circuit);
  let wrong: Machine | undefined;
  return (scenario) => {
    const done = misconception.changeScenario?.(scenario, circuit);
    if (seen === undefined && done === undefined) return { kind: 'no-difference' };
    wrong ??= variantOf(machine, seen ?? machine.plan);
    const { state, steady } = play(wrong, done ?? scenario);
    const tripped = scenario.faults.length === 0 && state.tripped.length + state.shorted.length > 0;
    if (!steady || tripped || isFlashing(wrong, state)) return { kind: 'no-answer' };
    return { kind: 'prediction', prediction: { misconception, machine: wrong, state } };
  };
}

/**
 * Solves a circuit the wrong way of a misconception, mechanisms moving in waves.
 *
 * @param machine - the machine of the circuit with the scenario's faults in it, where the caller has it already; one
 * that has been run makes this several times faster
 * @returns undefined when the idea makes no difference or leads to no answer; see `Foretold`
 */
export function predict(
  misconception: Misconception,
  circuit: Circuit,
  scenario: Scenario,
  machine: Machine = rightMachine(circuit, scenario),
): Prediction | undefined {
  const foretold = predictor(misconception, circuit, machine)(scenario);
  return foretold.kind === 'prediction' ? foretold.prediction : undefined;
}

/** The predictions of all misconceptions that make a difference; see `predict`. */
export function predictAll(
  circuit: Circuit,
  scenario: Scenario,
  machine: Machine = rightMachine(circuit, scenario),
): readonly Prediction[] {
  return MISCONCEPTIONS.flatMap((misconception) => predict(misconception, circuit, scenario, machine) ?? []);
}
