/** What joins the terminals of one device on the inside, whatever state it is in. */
import type { Device } from '../../shared/circuit.ts';
import { JoinedSets } from '../graph/index.ts';
import { anatomyOf } from './anatomy/index.ts';

export interface Inside {
  readonly terminals: readonly string[];
  /** Terminals with a contact or a load between them, directly or through others, have the same number. */
  readonly group: ReadonlyMap<string, number>;
}

export function insideOf(device: Device): Inside {
  const { terminals, contacts, loads } = anatomyOf(device);
  const sets = new JoinedSets<string>();
  for (const terminal of terminals) sets.add(terminal);
  for (const { from, to } of [...contacts, ...loads]) sets.join(from, to);
  const group = new Map(
    sets.sets().flatMap((set, number) => set.map((terminal) => [terminal, number] as const)),
  );
  return { terminals, group };
}
