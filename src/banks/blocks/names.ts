import { bankName } from '../../../shared/bank.ts';
import type { Circuit } from '../../../shared/circuit.ts';
import { nearest } from '../../circuit/index.ts';
import type { BankReport } from '../report.ts';
import type { Setting } from './head.ts';
import type { TopicBlocks } from './topic-blocks.ts';

/** The new name of a circuit or question; undefined when it is no name or taken (reported). */
export function newName(
  { value, position }: Setting,
  taken: { has(name: string): boolean },
  of: 'circuit' | 'question',
  report: BankReport,
): string | undefined {
  if (!bankName.safeParse(value).success) {
    report.add({ says: 'bank-value.name', name: value, of }, position);
    return undefined;
  }
  if (!taken.has(value)) return value;
  report.add({ says: 'bank-repeated-name.block', name: value, of }, position);
  return undefined;
}

/** The circuit of this name; undefined when there is none above (reported) or it couldn't be read (reported there). */
export function namedCircuit(
  { value, position }: Setting,
  { circuits }: TopicBlocks,
  report: BankReport,
): Circuit | undefined {
  if (!circuits.has(value)) {
    const names = [...circuits.keys()];
    report.add({ says: 'bank-unknown-circuit', name: value, meant: nearest(value, names), names }, position);
  }
  return circuits.get(value)?.circuit;
}
