import type { TerminalRef } from '../../../shared/circuit.ts';
import type { Concern, Found } from '../findings.ts';
import { TerminalSets } from '../terminal-sets.ts';
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
import type { Rule } from './rule.ts';

/** Returns that are both bonded to earth are one conductor anyway. */
function isBonded(one: Pole, other: Pole, { supplies }: CircuitView): boolean {
  const earthed = ({ supply, isReturn }: Pole) => isReturn && supplies.get(supply)?.earthed === true;
  return earthed(one) && earthed(other);
}

/** The first wire, in the order of the paths, with which the two come together. */
function joiningWire({ wires }: CircuitView, links: readonly Link[], one: Pole, other: Pole): Concern {
  const sets = new TerminalSets<TerminalRef>();
  for (const { from, to } of links) sets.join(from, to);
  for (const { from, to, path, step } of wires) {
    sets.join(from, to);
    if (sets.together(one.ref, other.ref)) return { kind: 'step', path, step };
  }
  return { kind: 'circuit' };
}

export const suppliesJoined: Rule = {
  name: 'supplies-joined',
  reason:
    'Supplies that are isolated from each other stay so: joined anywhere, in any position of any contact, the fault of one reaches the other, and electronics sees a control voltage.',
  source: 'common practice, no source',
  check(_circuit, view) {
    const links = linksOf(view);
    const neighbours = neighboursOf(view, links);
    const poles = polesOf(view);
    const found: Found[] = [];
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
        const contacts = wayBack(end, reached).toReversed();
        found.push({
          message:
            contacts.length === 0
              ? `The supplies ${one.supply} and ${other.supply} are joined: ${one.ref} and ${other.ref} are on one conductor.`
              : `The supplies ${one.supply} and ${other.supply} are joined, ${one.ref} to ${other.ref}, when ${contacts.map(linkText).join(', ')} ${contacts.length > 1 ? 'close' : 'closes'}.`,
          hint: `Keep the circuits of ${one.supply} and ${other.supply} apart: give each a pole, terminals and a return of its own.`,
          concern: joiningWire(view, links, one, other),
        });
      }
    }
    return found;
  },
};
