/** The fields of a scenario: `start: dead`, `fault: -K3:14 broken`, `do: press -S1; release -S1`. */
import type { Circuit } from '../../../shared/circuit.ts';
import type { Checked } from '../../../shared/problem.ts';
import type { Scenario } from '../../../shared/scenario.ts';
import { readActs, readFaults } from '../../circuit/index.ts';
import { BANK_LIMITS } from '../limits.ts';
import type { BankReport } from '../report.ts';
import { type Field, type Fields, proseOf } from './fields.ts';

export const SCENARIO_KEYS = ['start', 'fault', 'do'] as const;

/** Reads the scenario of a block; undefined when something in it is wrong (every mistake reported). */
export function readScenario(fields: Fields, circuit: Circuit, report: BankReport): Scenario | undefined {
  const startField = fields.get('start');
  const start = startField ? proseOf(startField) : 'live';
  if (start !== 'live' && start !== 'dead')
    report.add({ says: 'bank-value.start', word: start }, startField!.position);
  const faults = readList(fields.get('fault'), readFaults, circuit, report);
  const acts = readList(fields.get('do'), readActs, circuit, report);
  if (acts && acts.length > BANK_LIMITS.actsInAScenario) {
    report.add(
      { says: 'bank-too-large.acts', acts: acts.length, most: BANK_LIMITS.actsInAScenario },
      fields.get('do')!.position,
    );
    return undefined;
  }
  if ((start !== 'live' && start !== 'dead') || !faults || !acts) return undefined;
  return { start, faults, acts };
}

/** A field that is left out is an empty list. */
function readList<T>(
  field: Field | undefined,
  read: (text: string, circuit: Circuit) => Checked<T[]>,
  circuit: Circuit,
  report: BankReport,
): T[] | undefined {
  if (!field) return [];
  const list = read(field.text, circuit);
  if (list.ok) return list.value;
  report.within(list.problems, field.position);
  return undefined;
}
