import { bankName } from '../../../shared/bank.ts';
import type { Circuit } from '../../../shared/circuit.ts';
import { didYouMean, shown, someOf } from '../../circuit/wording.ts';
import type { BankReport } from '../report.ts';
import type { Setting } from './head.ts';
import type { TopicBlocks } from './topic-blocks.ts';

/** The new name of a circuit or question; undefined when it is no name or taken (reported). */
export function newName(
  { value, spot }: Setting,
  taken: { has(name: string): boolean },
  what: 'circuit' | 'question',
  report: BankReport,
): string | undefined {
  if (!bankName.safeParse(value).success) {
    report.add(
      'bank-value',
      spot,
      `${shown(value)} can't be the name of a ${what}.`,
      'A name has small letters, digits and hyphens: vent-fan-1.',
    );
    return undefined;
  }
  if (!taken.has(value)) return value;
  report.add(
    'bank-repeated-name',
    spot,
    `There is a ${what} ${value} in this topic already.`,
    'Give one of them another name.',
  );
  return undefined;
}

/** The circuit of this name; undefined when there is none above (reported) or it couldn't be read (reported there). */
export function namedCircuit(
  { value, spot }: Setting,
  { circuits }: TopicBlocks,
  report: BankReport,
): Circuit | undefined {
  if (!circuits.has(value)) {
    const names = [...circuits.keys()];
    report.add(
      'bank-unknown-circuit',
      spot,
      `There is no circuit ${shown(value)} above this block.`,
      names.length === 0
        ? 'Put it before this block: ```circuit id=….'
        : `${didYouMean(value, names)}There are: ${someOf(names)}.`,
    );
  }
  return circuits.get(value)?.circuit;
}
