import type { Circuit } from '../../shared/circuit.ts';
import type { Scenario } from '../../shared/scenario.ts';
import { readAs } from '../circuit/index.ts';
import { type Plan, planOf } from '../solver/index.ts';

/** A rating farther from every supply's voltage than this is not lit by it, or not by it alone. */
const FAR = 1.25;

/** Places joined by contacts, open or closed, when nothing is joined through a pole; a pole is a place of its own. */
function placesOf(plan: Plan): (node: number) => number {
  const poles = new Set(plan.supplies.flatMap(({ poles: all }) => all.map(({ node }) => node)));
  const parent = Int32Array.from({ length: plan.nodes }, (_, node) => node);
  const find = (node: number): number => {
    let at = node;
    while (parent[at] !== at) {
      parent[at] = parent[parent[at]!]!;
      at = parent[at]!;
    }
    return at;
  };
  for (const { a, b } of plan.switches) if (!poles.has(a) && !poles.has(b)) parent[find(a)] = find(b);
  return find;
}

/**
 * Whether something in a circuit could get a part of its voltage, in whatever state: there is a fault, a rating far from
 * every supply's voltage, or two loads that meet at a place which is no pole and go on to different places, so that
 * current can pass through one after the other.
 */
export function mayBeBetween(circuit: Circuit, { faults }: Scenario): boolean {
  if (faults.length > 0) return true;
  const plan = planOf(circuit);
  const placeOf = placesOf(plan);
  const poles = new Set(plan.supplies.flatMap(({ poles: all }) => all.map(({ node }) => node)));
  const beyond = new Map<number, number>();
  for (const { a, b, role, volts } of plan.loads) {
    if (role !== 'dirt' && readAs(role) === 'winding') continue;
    if (circuit.supplies.every((supply) => supply.volts < volts / FAR || supply.volts > volts * FAR))
      return true;
    for (const [here, there] of [
      [a, b],
      [b, a],
    ] as const) {
      if (poles.has(here)) continue;
      const place = placeOf(here);
      const other = placeOf(there);
      const known = beyond.get(place);
      if (known !== undefined && known !== other) return true;
      beyond.set(place, other);
    }
  }
  return false;
}
