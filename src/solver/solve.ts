import type { Circuit } from '../../shared/circuit.ts';
import type { Act, Scenario } from '../../shared/scenario.ts';
import type { Solution } from '../../shared/solution.ts';
import { type Machine, machineOf } from './machine.ts';
import { everyBeginning, everyOutcome } from './outcomes.ts';
import type { Plan } from './plan.ts';
import { planOf } from './plan-of.ts';
import { play } from './play.ts';
import { REASONING_LIMITS } from './reasoning.ts';
import { runTimed } from './run.ts';
import type { State } from './state.ts';
import { tell } from './tell.ts';
import { traceAll } from './trace.ts';

/** Steps of evaluating, some seconds of them, after which the acts that are left are not done. */
const MOST_EFFORT = 80_000_000;

export interface Solved {
  /** Its outcome is `undecided` where not every order could be tried within the limits, or not every act be done. */
  readonly solution: Solution;
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
  let standing = everyBeginning(machine, scenario.start, REASONING_LIMITS);
  const done: Act[] = [];
  for (const act of scenario.acts) {
    if (machine.effort.steps > MOST_EFFORT) break;
    standing = everyOutcome(machine, standing, act, REASONING_LIMITS);
    done.push(act);
  }
  const decided = standing.complete && done.length === scenario.acts.length;
  // What moving in waves gives is shown of a race, and of what isn't decided.
  const nominal =
    !decided || standing.endings.length > 1 ? play(machine, { ...scenario, acts: done }).state : undefined;
  const { outcome, readings, state } = tell(
    machine,
    { ...standing, complete: decided },
    nominal ?? standing.endings[0]!.states[0]!,
  );
  const { happenings } = runTimed(machine, scenario, words);
  const solution: Solution = {
    outcome,
    ...readings,
    steps: [...happenings],
    trace: traceAll(machine, state),
  };
  return { solution, machine, state };
}

/**
 * Solves a circuit: what holds after the scenario's acts, whether that is certain, what happened on the way, and why each
 * load is in its state.
 */
export const solve = (circuit: Circuit, scenario: Scenario, words?: (act: Act) => string): Solved =>
  solvePlan(planOf(circuit, scenario.faults), scenario, words);
