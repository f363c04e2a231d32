import type { Circuit } from '../../shared/circuit.ts';
import type { Scenario } from '../../shared/scenario.ts';
import type { Plan } from '../solver/index.ts';

/**
 * A solver that is wrong in one way: a change to the plan of a circuit, to the scenario, or to both, solved like any
 * other. At least one of the two functions is there.
 */
export interface Misconception {
  /** Stable: `make-for-break`. Kept in records of answers; the words of the ideas tell it to learners, docs/misconceptions.md its source. */
  readonly id: string;
  /** The plan as someone with this idea sees it; undefined when the idea makes no difference to this circuit's plan. */
  readonly changePlan?: (plan: Plan, circuit: Circuit) => Plan | undefined;
  readonly changeScenario?: (scenario: Scenario, circuit: Circuit) => Scenario | undefined;
}
