/** Circuits in blocks: the notation, and the drawing rules on what it says. */
import type { Circuit } from '../../../shared/circuit.ts';
import { type Places, problemOf, readCircuitWithPlaces } from '../../circuit/index.ts';
import { checkRules } from '../../circuit/rules/index.ts';
import { everyRule } from '../../solver/index.ts';
import { BANK_LIMITS } from '../limits.ts';
import type { BankReport } from '../report.ts';
import type { Spot } from '../source.ts';
import type { RulesOff } from './rules-off.ts';

export interface CircuitInFile {
  readonly circuit: Circuit;
  readonly places: Places;
  readonly spot: Spot;
}

/** Reads the notation at a place of the file; undefined when there is a mistake in it (all reported). */
export function readNotation(text: string, spot: Spot, report: BankReport): CircuitInFile | undefined {
  const read = readCircuitWithPlaces(text);
  if (!read.ok) {
    report.within(read.problems, spot);
    return undefined;
  }
  const { length } = read.value.circuit.devices;
  if (length <= BANK_LIMITS.devicesInACircuit) return { ...read.value, spot };
  report.add(
    'bank-too-large',
    spot,
    `There are ${length} devices; a circuit in a bank has at most ${BANK_LIMITS.devicesInACircuit}.`,
    'Show a part of it.',
  );
  return undefined;
}

/**
 * Reports what breaks the drawing rules, but for the rules that are off; and a rule that is off and isn't broken.
 *
 * @param drawn - what is held against the rules, where that is more than what is written
 */
export function keepRules(
  { circuit, places, spot }: CircuitInFile,
  off: RulesOff | undefined,
  report: BankReport,
  drawn: Circuit = circuit,
): void {
  const findings = checkRules(drawn, everyRule);
  for (const finding of findings.filter(({ code }) => !off?.rules.has(code))) {
    const problem = problemOf(finding, drawn, places);
    const hint = `${problem.hint} (Where a lesson shows this on purpose, write: rules: off ${finding.code} because …)`;
    report.within([{ ...problem, hint }], spot);
  }
  for (const name of off?.rules ?? [])
    if (!findings.some(({ code }) => code === name))
      report.add(
        'bank-rules',
        off!.spot,
        `The rule ${name} is off, and nothing in this circuit breaks it.`,
        'Leave it out.',
      );
}
