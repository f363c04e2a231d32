/** Circuits and scenarios for tests, written in the notation. */
import type { Circuit } from '../../shared/circuit.ts';
import type { Scenario } from '../../shared/scenario.ts';
import { readActs, readCircuit, readFaults } from '../../src/circuit/index.ts';
import { told } from '../support/in-english.ts';

export function circuitOf(text: string): Circuit {
  const read = readCircuit(text);
  if (!read.ok)
    throw new Error(
      told(read.problems)
        .map(({ line, message }) => `${line}: ${message}`)
        .join('\n'),
    );
  return read.value;
}

/** `press -S1; wait 5 s` and `-K3:14 broken`, both may be empty. */
export function scenarioOf(acts = '', faults = '', start: Scenario['start'] = 'live'): Scenario {
  const done = acts === '' ? { ok: true as const, value: [] } : readActs(acts);
  const wrong = faults === '' ? { ok: true as const, value: [] } : readFaults(faults);
  if (!done.ok || !wrong.ok) throw new Error(`not understood: ${acts} / ${faults}`);
  return { start, faults: wrong.value, acts: done.value };
}
