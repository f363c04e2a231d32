/** Which conductors the supplies hold at which potential: poles that sources and earth tie to each other without resistance. */
import { alongAxis } from './axes.ts';
import type { Machine } from './machine.ts';
import { NO_VOLTS, Potentials } from './potentials.ts';
import { polesThatHold } from './supplies.ts';

/** Supplies whose poles have definite potentials against each other: between two different ones a current can flow. */
export interface RigidSupplies {
  readonly supplies: readonly number[];
  /** Conductors by potential, the return of the first supply first. */
  readonly potentials: readonly (readonly number[])[];
}

const SAME = 1e-6;

/**
 * The groups of supplies that are on, each tied together by shared conductors or by earth.
 *
 * @param conductorOf - the conductor that a node is part of, as closed contacts join them
 */
export function rigidSupplies(
  machine: Machine,
  supplyOn: Uint8Array,
  conductorOf: (node: number) => number,
): RigidSupplies[] {
  const { plan, axes } = machine;
  const tied = new Potentials(axes, plan.nodes + 1);
  const on = plan.supplies.map((_, index) => supplyOn[index] === 1);
  plan.supplies.forEach((supply, index) => {
    const common = conductorOf(supply.poles.at(-1)!.node);
    for (const pole of polesThatHold(supply, on[index]!))
      tied.fix(conductorOf(pole.node), common, (axis) => alongAxis(axes, pole, axis));
    if (supply.earthed) tied.fix(common, plan.nodes, NO_VOLTS);
  });
  const groups = new Map<number, { supplies: number[]; potentials: number[][] }>();
  plan.supplies.forEach(({ poles }, index) => {
    if (!on[index]) return;
    const root = tied.find(conductorOf(poles[0]!.node));
    const group = groups.get(root) ?? { supplies: [], potentials: [] };
    groups.set(root, group);
    group.supplies.push(index);
    // The return comes last of a supply's poles, and is looked at first.
    for (const { node } of [...poles].reverse()) {
      const conductor = conductorOf(node);
      tied.find(conductor);
      const alike = group.potentials.find(([first]) =>
        tied.volts.every((along) => Math.abs(along[first!]! - along[conductor]!) < SAME),
      );
      if (!alike) group.potentials.push([conductor]);
      else if (!alike.includes(conductor)) alike.push(conductor);
    }
  });
  return [...groups.values()];
}
