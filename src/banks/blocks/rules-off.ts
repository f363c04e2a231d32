/** `rules: off only-legs-wired because the lesson shows this mistake`: drawing rules that a circuit breaks on purpose. */
import { nearest } from '../../circuit/index.ts';
import { everyRule } from '../../solver/index.ts';
import type { Position } from '../position.ts';
import type { BankReport } from '../report.ts';

export interface RulesOff {
  readonly rules: ReadonlySet<string>;
  readonly position: Position;
}

const NAMES = everyRule.map(({ name }) => name);

/** Reads the value of `rules`; undefined when it is wrong (reported). */
export function readRulesOff(text: string, position: Position, report: BankReport): RulesOff | undefined {
  const match = /^off\s+(\S.*?)\s+because\s+\S/.exec(text.trim().replaceAll('\n', ' '));
  if (!match) {
    report.add({ says: 'bank-rules.how', rules: NAMES }, position);
    return undefined;
  }
  const names = match[1]!.split(/[\s,]+/).filter(Boolean);
  const unknown = names.filter((name) => !NAMES.includes(name));
  for (const name of unknown)
    report.add(
      { says: 'bank-rules.unknown', rule: name, meant: nearest(name, NAMES), rules: NAMES },
      position,
    );
  return unknown.length === 0 ? { rules: new Set(names), position } : undefined;
}
