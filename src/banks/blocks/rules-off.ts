/** `rules: off only-legs-wired because the lesson shows this mistake`: drawing rules that a circuit breaks on purpose. */
import { anyOf, didYouMean, shown } from '../../circuit/wording.ts';
import { everyRule } from '../../solver/index.ts';
import type { BankReport } from '../report.ts';
import type { Spot } from '../source.ts';

export interface RulesOff {
  readonly rules: ReadonlySet<string>;
  readonly spot: Spot;
}

const NAMES = everyRule.map(({ name }) => name);

/** Reads the value of `rules`; undefined when it is wrong (reported). */
export function readRulesOff(text: string, spot: Spot, report: BankReport): RulesOff | undefined {
  const match = /^off\s+(\S.*?)\s+because\s+\S/.exec(text.trim().replaceAll('\n', ' '));
  if (!match) {
    report.add(
      'bank-rules',
      spot,
      'Which drawing rules does this circuit break, and why?',
      `Write it like: off ${NAMES[0]} because the lesson shows this mistake. The rules are ${NAMES.join(', ')}.`,
    );
    return undefined;
  }
  const names = match[1]!.split(/[\s,]+/).filter(Boolean);
  const unknown = names.filter((name) => !NAMES.includes(name));
  for (const name of unknown)
    report.add(
      'bank-rules',
      spot,
      `There is no drawing rule ${shown(name)}.`,
      `${didYouMean(name, NAMES)}The rules are ${anyOf(NAMES, 'and')}.`,
    );
  return unknown.length === 0 ? { rules: new Set(names), spot } : undefined;
}
