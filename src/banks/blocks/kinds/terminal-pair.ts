import type { Circuit } from '../../../../shared/circuit.ts';
import type { BankReport } from '../../report.ts';
import type { Piece } from '../fields.ts';
import { askableIn } from '../state-words.ts';

/** Two terminals of the circuit in one piece of text, `-K3:A1 -K3:A2`; undefined when it is wrong (reported). */
export function readPair(piece: Piece, circuit: Circuit, report: BankReport): [string, string] | undefined {
  const terminals = askableIn(circuit, ['terminal']);
  const [one, other, ...rest] = piece.text.split(/\s+/);
  if (one === undefined || other === undefined || rest.length > 0) {
    report.add({ says: 'bank-field.pair', text: piece.text }, piece.position);
    return undefined;
  }
  const unknown = [one, other].filter((name) => !terminals.has(name));
  for (const name of unknown) report.add({ says: 'bank-unknown-item.terminal', item: name }, piece.position);
  return unknown.length === 0 ? [one, other] : undefined;
}
