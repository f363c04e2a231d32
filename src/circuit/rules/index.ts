/** The drawing rules: what a drawing keeps beyond being readable. docs/errors.md lists them. */
import type { Circuit } from '../../../shared/circuit.ts';
import type { RuleProblemSaid, Said } from '../../words/index.ts';
import type { Finding } from '../findings.ts';
import { circuitView } from '../view.ts';
import { commonUnused } from './common-unused.ts';
import { contactOnReturn } from './contact-on-return.ts';
import { designationTwice } from './designation-twice.ts';
import { loadNotConnected } from './load-not-connected.ts';
import { onlyLegsWired } from './only-legs-wired.ts';
import type { DrawingRule, Rule } from './rule.ts';
import { suppliesJoined } from './supplies-joined.ts';
import { terminalNotThere } from './terminal-not-there.ts';
import { terminalNumber } from './terminal-number.ts';
import { wrongVoltage } from './wrong-voltage.ts';

export type { DrawingRule, Rule } from './rule.ts';

/** Every rule that can be checked without solving the circuit. */
export const drawingRules: readonly DrawingRule[] = [
  designationTwice,
  terminalNotThere,
  terminalNumber,
  loadNotConnected,
  commonUnused,
  onlyLegsWired,
  suppliesJoined,
  contactOnReturn,
  wrongVoltage,
];

/** Everything in a circuit that breaks a rule; the code of a finding is the rule's name. */
export function checkRules(circuit: Circuit): Finding<RuleProblemSaid>[];
export function checkRules<S extends Said>(circuit: Circuit, rules: readonly Rule<S>[]): Finding<S>[];
export function checkRules(circuit: Circuit, rules: readonly Rule[] = drawingRules): Finding[] {
  const view = circuitView(circuit);
  return rules.flatMap((rule) => rule.check(circuit, view).map((found) => ({ code: rule.name, ...found })));
}
