/** Rails: what feeding devices (fuses, breakers, isolators) join to a pole of a supply, so that its potential is known. */
import { Joining } from './joining.ts';
import { DRIVE, type Machine } from './machine.ts';

/** Nodes joined to a pole through closed feeding devices. */
export interface Rails {
  readonly joining: Joining;
  readonly re: Float64Array;
  readonly im: Float64Array;
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
  const { plan, closedMask } = machine;
  const joining = new Joining(plan.nodes);
  for (const [a, b] of plan.joins) joining.join(a, b);
  for (let index = 0; index < plan.switches.length; index++) {
    const { a, b, mechanism } = plan.switches[index]!;
    if (closedMask[index] === 0 || !feeds(machine, mechanism)) continue;
    const position = mechanism < 0 ? 0 : at[mechanism]!;
    if ((position & ~closedMask[index]!) === 0) joining.join(a, b);
  }
  const re = new Float64Array(plan.nodes).fill(Number.NaN);
  const im = new Float64Array(plan.nodes).fill(Number.NaN);
  const group = new Int32Array(plan.nodes).fill(-1);
  let whole = false;
  plan.supplies.forEach((supply, index) => {
    if (!supplyOn[index]) return;
    // All earthed supplies share one reference.
    const reference = supply.earthed
      ? plan.supplies.findIndex(({ earthed }, at) => earthed && supplyOn[at])
      : index;
    for (const pole of supply.poles) {
      const root = joining.find(pole.node);
      if (group[root] !== -1 && (group[root] !== reference || re[root] !== pole.re || im[root] !== pole.im))
        whole = true;
      re[root] = pole.re;
      im[root] = pole.im;
      group[root] = reference;
    }
  });
  const number = new Int32Array(plan.nodes).fill(-1);
  const nodes: number[] = [];
  for (let node = 0; node < plan.nodes; node++) {
    const root = joining.find(node);
    re[node] = re[root]!;
    im[node] = im[root]!;
    group[node] = group[root]!;
    if (group[node] === -1) continue;
    let rail = nodes.findIndex(
      (other) => group[other] === group[node] && re[other] === re[node] && im[other] === im[node],
    );
    if (rail < 0) rail = nodes.push(node) - 1;
    number[node] = rail;
  }
  return { joining, re, im, group, number, nodes, whole };
}
