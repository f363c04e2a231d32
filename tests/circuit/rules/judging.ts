import type { Circuit } from '../../../shared/circuit.ts';
import { checkRules, problemOf, type Rule, readCircuitWithPlaces } from '../../../src/circuit/index.ts';
import { tellProblem } from '../../../src/words/problems.ts';
import { english } from '../../support/in-english.ts';
import { whole } from '../reading.ts';

/** What one rule says of a circuit in the notation: `line:column message`, then the hint. */
export function judged(rule: Rule, text: string): readonly (readonly [string, string])[] {
  const { circuit, places } = whole(readCircuitWithPlaces(text));
  return checkRules(circuit, [rule]).map((finding) => {
    const { code, line, column, message, hint } = tellProblem(english, problemOf(finding, circuit, places));
    if (code !== rule.name) throw new Error(`the finding has the code ${code}`);
    return [`${line}:${column} ${message}`, hint] as const;
  });
}

/** What one rule says of a circuit that the reader would refuse: the messages. */
export const judgedData = (rule: Rule, circuit: Circuit): readonly string[] =>
  checkRules(circuit, [rule]).map((finding) => tellProblem(english, problemOf(finding, circuit)).message);
