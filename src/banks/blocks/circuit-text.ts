/** Circuits in blocks: the notation, and the drawing rules on what it says. */
import type { Circuit } from '../../../shared/circuit.ts';
import { problemOf, readCircuitWithPlaces, type TextPlaces } from '../../circuit/index.ts';
import { checkRules } from '../../circuit/rules/index.ts';
import { everyRule } from '../../solver/index.ts';
import type { BankProblemSaid } from '../../words/index.ts';
import { BANK_LIMITS } from '../limits.ts';
import type { Position } from '../position.ts';
import type { BankReport } from '../report.ts';
import type { RulesOff } from './rules-off.ts';

export interface CircuitInFile {
  readonly circuit: Circuit;
  readonly places: TextPlaces;
  readonly position: Position;
}

/** Reads the notation at a place of the file; undefined when there is a mistake in it (all reported). */
export function readNotation(
  text: string,
  position: Position,
  report: BankReport,
): CircuitInFile | undefined {
  const read = readCircuitWithPlaces(text);
  if (!read.ok) {
    report.within(read.problems, position);
    return undefined;
  }
  const { length } = read.value.circuit.devices;
  if (length <= BANK_LIMITS.devicesInACircuit) return { ...read.value, position };
  report.add(
    { says: 'bank-too-large.devices', devices: length, most: BANK_LIMITS.devicesInACircuit },
    position,
  );
  return undefined;
}

/**
 * Reports what breaks the drawing rules, but for the rules that are off; and a rule that is off and isn't broken.
 *
 * @param drawn - what is held against the rules, where that is more than what is written
 */
export function keepRules(
  { circuit, places, position }: CircuitInFile,
  off: RulesOff | undefined,
  report: BankReport,
  drawn: Circuit = circuit,
): void {
  const findings = checkRules(drawn, everyRule);
  for (const finding of findings.filter(({ code }) => !off?.rules.has(code))) {
    const { code: rule, said: broken } = finding;
    const said: BankProblemSaid = { says: 'bank-rules.broken', rule, broken };
    report.within([{ ...problemOf(finding, drawn, places), said }], position);
  }
  for (const name of off?.rules ?? [])
    if (!findings.some(({ code }) => code === name))
      report.add({ says: 'bank-rules', rule: name }, off!.position);
}
