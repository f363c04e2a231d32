/** Rails: what feeding devices (fuses, breakers, isolators) join to a pole of a supply, so that its potential is known. */

import { Joining } from '../graph/index.ts';
import { alongAxis, newVolts, type Volts } from './axes.ts';
import { DRIVE, type Machine } from './machine.ts';
import { polesThatHold } from './supplies.ts';

/** Nodes joined to a pole through closed feeding devices. */
export interface Rails {
  readonly joining: Joining;
  /** Potential of each node that is part of a rail, along each axis; NaN elsewhere. */
  readonly volts: Volts;
  readonly group: Int32Array;
  /** Number of the rail each node is part of, -1 elsewhere. Rails of one potential and reference are one. */
  readonly number: Int32Array;
  /** A node of each rail. */
  readonly nodes: readonly number[];
  readonly whole: boolean;
}

/** Whether a switch belongs to a feeding device, or is an open place that nothing moves. */
export const feeds = (machine: Machine, mechanism: number): boolean =>
  mechanism < 0 || machine.drive[mechanism] === DRIVE.feed;

/** The rails of one state of the feeding devices and supplies. */
export function findRails(machine: Machine, at: Uint8Array, supplyOn: Uint8Array): Rails {
  const { plan, closedMask, axes } = machine;
  const joining = new Joining(plan.nodes);
  for (const [a, b] of plan.joins) joining.join(a, b);
  for (let index = 0; index < plan.switches.length; index++) {
    const { a, b, mechanism } = plan.switches[index]!;
    if (closedMask[index] === 0 || !feeds(machine, mechanism)) continue;
    const position = mechanism < 0 ? 0 : at[mechanism]!;
    if ((position & ~closedMask[index]!) === 0) joining.join(a, b);
  }
  const volts = newVolts(axes, plan.nodes);
  for (const along of volts) along.fill(Number.NaN);
  const group = new Int32Array(plan.nodes).fill(-1);
  const alike = (one: number, other: number): boolean => {
    for (const along of volts) if (along[one] !== along[other]) return false;
    return true;
  };
  let whole = false;
  plan.supplies.forEach((supply, index) => {
    // All earthed supplies share one reference.
    const reference = supply.earthed ? plan.supplies.findIndex(({ earthed }) => earthed) : index;
    for (const pole of polesThatHold(supply, supplyOn[index] === 1)) {
      const root = joining.find(pole.node);
      if (group[root] !== -1 && group[root] !== reference) whole = true;
      for (let axis = 0; axis < volts.length; axis++) {
        const along = volts[axis]!;
        const held = alongAxis(axes, pole, axis);
        if (group[root] !== -1 && along[root] !== held) whole = true;
        along[root] = held;
      }
      group[root] = reference;
    }
  });
  const number = new Int32Array(plan.nodes).fill(-1);
  const nodes: number[] = [];
  for (let node = 0; node < plan.nodes; node++) {
    const root = joining.find(node);
    for (const along of volts) along[node] = along[root]!;
    group[node] = group[root]!;
    if (group[node] === -1) continue;
    let rail = nodes.findIndex((other) => group[other] === group[node] && alike(other, node));
    if (rail < 0) rail = nodes.push(node) - 1;
    number[node] = rail;
  }
  return { joining, volts, group, number, nodes, whole };
}
