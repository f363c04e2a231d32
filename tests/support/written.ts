/** Circuits, acts and scenarios for tests, written in the notation; what isn't right in them is told. */
import type { Circuit } from '../../shared/circuit.ts';
import type { Checked } from '../../shared/problem.ts';
import type { Act, Scenario } from '../../shared/scenario.ts';
import { readActs, readCircuit, readFaults } from '../../src/circuit/index.ts';
import { told } from './in-english.ts';

function right<T>(read: Checked<T>): T {
  if (read.ok) return read.value;
  throw new Error(
    told(read.problems)
      .map(({ line, message }) => `${line}: ${message}`)
      .join('\n'),
  );
}

export const circuitOf = (text: string): Circuit => right(readCircuit(text));

/** `press -S1; wait 5 s`; with the circuit it is looked whether they can be done to it. */
export const actsOf = (acts: string, circuit?: Circuit): readonly Act[] => right(readActs(acts, circuit));

/** `press -S1; wait 5 s` and `-K3:14 broken`, both may be empty. */
export const scenarioOf = (acts = '', faults = '', start: Scenario['start'] = 'live'): Scenario => ({
  start,
  faults: faults === '' ? [] : [...right(readFaults(faults))],
  acts: acts === '' ? [] : [...actsOf(acts)],
});
