/** What can be asked about in a circuit, and the words for the states it can have. */
import type { Circuit } from '../../../shared/circuit.ts';
import { anatomyOf, supplyTerminals, terminalRefOf } from '../../circuit/index.ts';
import { type ItemKind, itemKind, STATES } from '../../questions/index.ts';

/** Items by name (`-H1`, `-K3`, `-A1:I1`, `-F1:2`), each with its state words. */
export type Askable = ReadonlyMap<string, readonly string[]>;

/** Everything of these kinds, in the order of the circuit. */
export function askableIn(circuit: Circuit, kinds: readonly ItemKind[]): Askable {
  const askable = new Map<string, readonly string[]>();
  const add = (name: string, kind: ItemKind | undefined): void => {
    if (kind && kinds.includes(kind)) askable.set(name, STATES[kind]);
  };
  for (const supply of circuit.supplies)
    for (const terminal of supplyTerminals(supply)) add(terminalRefOf(supply.name, terminal), 'terminal');
  for (const device of circuit.devices) {
    add(device.name, itemKind(circuit, device.name));
    for (const terminal of anatomyOf(device).terminals) {
      const name = terminalRefOf(device.name, terminal);
      add(name, 'terminal');
      add(name, itemKind(circuit, name));
    }
  }
  return askable;
}
