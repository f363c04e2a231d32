import type { Circuit } from '../../../shared/circuit.ts';
import type { Scenario } from '../../../shared/scenario.ts';
import type { Rename } from '../letters.ts';
import { atOnce } from './at-once.ts';
import type { Signals } from './lines.ts';
import { slowly } from './slowly.ts';

/**
 * What changes in a scenario, as lines from moment to moment.
 *
 * @param operateTimes - with the times that relays take; where something never rests it is always with them
 */
export const signalsOf = (
  circuit: Circuit,
  scenario: Scenario,
  rename: Rename,
  operateTimes: boolean,
): Signals =>
  (operateTimes ? undefined : atOnce(circuit, scenario, rename)) ?? slowly(circuit, scenario, rename);
