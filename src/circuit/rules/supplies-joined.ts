import type { TerminalRef } from '../../../shared/circuit.ts';
import { JoinedSets } from '../../graph/index.ts';
import type { Concern } from '../findings.ts';
import type { CircuitView } from '../view.ts';
import {
  type Link,
  linksOf,
  linkText,
  neighboursOf,
  type Pole,
  polesOf,
  reach,
  wayBack,
} from './closable.ts';
import type { Broken, DrawingRule } from './rule.ts';

/** Returns that are both bonded to earth are one conductor anyway. */
function isBonded(one: Pole, other: Pole, { supplies }: CircuitView): boolean {
  const earthed = ({ supply, isReturn }: Pole) => isReturn && supplies.get(supply)?.earthed === true;
  return earthed(one) && earthed(other);
}

/** The first wire, in the order of the paths, with which the two come together. */
function joiningWire({ wires }: CircuitView, links: readonly Link[], one: Pole, other: Pole): Concern {
  const sets = new JoinedSets<TerminalRef>();
  for (const { from, to } of links) sets.join(from, to);
  for (const { from, to, path, step } of wires) {
    sets.join(from, to);
    if (sets.together(one.ref, other.ref)) return { kind: 'step', path, step };
  }
  return { kind: 'circuit' };
}

export const suppliesJoined: DrawingRule = {
  name: 'supplies-joined',
  check(_circuit, view) {
    const links = linksOf(view);
    const neighbours = neighboursOf(view, links);
    const poles = polesOf(view);
    const found: Broken[] = [];
    const done = new Set<string>();
    for (const [index, one] of poles.entries()) {
      const start = view.conductors.of.get(one.ref)!;
      const reached = reach(start, neighbours);
      for (const other of poles.slice(index + 1)) {
        const pair = `${one.supply}${other.supply}`;
        const end = view.conductors.of.get(other.ref)!;
        if (one.supply === other.supply || done.has(pair) || !reached.has(end)) continue;
        if (isBonded(one, other, view)) continue;
        done.add(pair);
        const contacts = wayBack(end, reached).toReversed().map(linkText);
        const both = {
          supplies: [one.supply, other.supply],
          poles: [one.ref, other.ref],
        } as const;
        found.push({
          said:
            contacts.length === 0
              ? { says: 'supplies-joined', ...both }
              : { says: 'supplies-joined.by', ...both, contacts },
          concern: joiningWire(view, links, one, other),
        });
      }
    }
    return found;
  },
};
