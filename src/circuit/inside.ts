/** What joins the terminals of one device on the inside, whatever state it is in. */
import type { Device } from '../../shared/circuit.ts';
import { anatomyOf } from './anatomy/index.ts';

export interface Inside {
  readonly terminals: readonly string[];
  /** Terminals with a contact or a load between them, directly or through others, have the same number. */
  readonly group: ReadonlyMap<string, number>;
}

export function insideOf(device: Device): Inside {
  const { terminals, contacts, loads } = anatomyOf(device);
  const parent = new Map<string, string>();
  const root = (name: string): string => {
    let at = name;
    for (let up = parent.get(at); up !== undefined; up = parent.get(at)) at = up;
    return at;
  };
  for (const { from, to } of [...contacts, ...loads]) {
    const [a, b] = [root(from), root(to)];
    if (a !== b) parent.set(b, a);
  }
  const numbers = new Map<string, number>();
  const group = new Map<string, number>();
  for (const terminal of terminals) {
    const top = root(terminal);
    if (!numbers.has(top)) numbers.set(top, numbers.size);
    group.set(terminal, numbers.get(top)!);
  }
  return { terminals, group };
}
