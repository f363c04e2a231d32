/**
 * The whole network at once, exactly: closed contacts and ideal sources join nodes into rigid groups with known
 * differences of potential (a union-find that carries an offset), what is left between the groups is resistors. Slower
 * than the islands and always right: it decides short circuits, joined supplies and meter readings, and the tests
 * hold the islands against it.
 */
import { Joining } from './joining.ts';
import type { Machine } from './machine.ts';
import { solveResistors } from './star-mesh.ts';
import type { State } from './state.ts';

export interface Network {
  /** Potential of each node; comparable only between nodes of the same reference. */
  readonly re: Float64Array;
  readonly im: Float64Array;
  /** Nodes with the same number share a reference, so a meter between them reads something definite. */
  readonly reference: Int32Array;
  /** Indices of supplies of which two poles are joined without resistance. */
  readonly shorted: readonly number[];
}

/** Union-find in which each node knows its potential against its root. */
class Potentials {
  readonly parent: Int32Array;
  readonly re: Float64Array;
  readonly im: Float64Array;

  constructor(size: number) {
    this.parent = Int32Array.from({ length: size }, (_, index) => index);
    this.re = new Float64Array(size);
    this.im = new Float64Array(size);
  }

  /** The root; afterwards `re` and `im` of the node are its potential against it. */
  find(node: number): number {
    const { parent, re, im } = this;
    const way: number[] = [];
    let root = node;
    while (parent[root] !== root) {
      way.push(root);
      root = parent[root]!;
    }
    let sumRe = 0;
    let sumIm = 0;
    for (let index = way.length - 1; index >= 0; index--) {
      const at = way[index]!;
      sumRe += re[at]!;
      sumIm += im[at]!;
      re[at] = sumRe;
      im[at] = sumIm;
      parent[at] = root;
    }
    return root;
  }

  /** Fixes potential(a) - potential(b); false when that contradicts what is known. */
  fix(a: number, b: number, re: number, im: number): boolean {
    const rootA = this.find(a);
    const rootB = this.find(b);
    const differenceRe = re + this.re[b]! - this.re[a]!;
    const differenceIm = im + this.im[b]! - this.im[a]!;
    if (rootA === rootB) return Math.abs(differenceRe) < 1e-9 && Math.abs(differenceIm) < 1e-9;
    this.parent[rootA] = rootB;
    this.re[rootA] = differenceRe;
    this.im[rootA] = differenceIm;
    return true;
  }
}

/** Whether a switch is closed in this state. */
export const isClosed = (machine: Machine, at: Uint8Array, index: number): boolean => {
  const mask = machine.closedMask[index]!;
  const mechanism = machine.switchMechanism[index]!;
  return mask !== 0 && (mechanism < 0 || (at[mechanism]! & ~mask) === 0);
};

/** Solves the network of a state as it stands. A short-circuited supply is left out of what is solved. */
export function solveNetwork(machine: Machine, at: Uint8Array, supplyOn: Uint8Array): Network {
  const { plan } = machine;
  const potentials = new Potentials(plan.nodes);
  for (const [a, b] of plan.joins) potentials.fix(a, b, 0, 0);
  plan.switches.forEach(({ a, b }, index) => {
    if (isClosed(machine, at, index)) potentials.fix(a, b, 0, 0);
  });
  const shorted: number[] = [];
  let earth = -1;
  plan.supplies.forEach((supply, index) => {
    const common = supply.poles.at(-1)!;
    if (!supplyOn[index]) return;
    // A failing pole must leave no half-made union behind, so the poles are tried before they are fixed.
    const apart = supply.poles.every((one, at) =>
      supply.poles.every((other, before) => {
        if (before >= at || potentials.find(one.node) !== potentials.find(other.node)) return true;
        const re = potentials.re[one.node]! - potentials.re[other.node]!;
        const im = potentials.im[one.node]! - potentials.im[other.node]!;
        return Math.abs(re - one.re + other.re) < 1e-9 && Math.abs(im - one.im + other.im) < 1e-9;
      }),
    );
    if (!apart) {
      shorted.push(index);
      return;
    }
    for (const pole of supply.poles) {
      if (!potentials.fix(pole.node, common.node, pole.re, pole.im) && !shorted.includes(index))
        shorted.push(index);
    }
  });
  plan.supplies.forEach((supply, index) => {
    if (!supply.earthed || !supplyOn[index]) return;
    const common = supply.poles.at(-1)!.node;
    if (earth < 0) earth = common;
    else if (!potentials.fix(common, earth, 0, 0) && !shorted.includes(index)) shorted.push(index);
  });
  return { ...solveGroups(machine, potentials), shorted };
}

/**
 * The resistors between rigid groups. One group of each connected part is its reference, the one that most hangs on; the
 * others are unknown. A resistor sees the difference of two groups plus a fixed one, that of its ends against their roots.
 */
function solveGroups(machine: Machine, potentials: Potentials): Omit<Network, 'shorted'> {
  const { plan } = machine;
  const groupOf = Int32Array.from({ length: plan.nodes }, (_, node) => potentials.find(node));
  const parts = new Joining(plan.nodes);
  const degree = new Int32Array(plan.nodes);
  const links = { a: [] as number[], b: [] as number[], siemens: [] as number[] };
  const extraRe: number[] = [];
  const extraIm: number[] = [];
  for (const { a, b, siemens } of plan.loads) {
    const one = groupOf[a]!;
    const other = groupOf[b]!;
    if (siemens === 0 || one === other) continue;
    parts.join(one, other);
    degree[one] = degree[one]! + 1;
    degree[other] = degree[other]! + 1;
    links.a.push(one);
    links.b.push(other);
    links.siemens.push(siemens);
    extraRe.push(potentials.re[a]! - potentials.re[b]!);
    extraIm.push(potentials.im[a]! - potentials.im[b]!);
  }
  const chosen = new Int32Array(plan.nodes).fill(-1);
  for (const group of [...links.a, ...links.b]) {
    const part = parts.find(group);
    if (chosen[part] === -1 || degree[group]! > degree[chosen[part]!]!) chosen[part] = group;
  }
  const groupRe = new Float64Array(plan.nodes);
  const groupIm = new Float64Array(plan.nodes);
  const { steps } = solveResistors(
    { ...links, extraRe, extraIm },
    (group) => chosen[parts.find(group)] === group,
    groupRe,
    groupIm,
  );
  machine.effort.steps += steps + 4 * (plan.nodes + plan.switches.length + plan.loads.length);
  const re = new Float64Array(plan.nodes);
  const im = new Float64Array(plan.nodes);
  const reference = new Int32Array(plan.nodes);
  for (let node = 0; node < plan.nodes; node++) {
    const group = groupOf[node]!;
    re[node] = groupRe[group]! + potentials.re[node]!;
    im[node] = groupIm[group]! + potentials.im[node]!;
    reference[node] = parts.find(group);
  }
  return { re, im, reference };
}

/** Writes the voltages of every load from the whole network; returns the short-circuited supplies. */
export function evaluateWhole(machine: Machine, state: State): readonly number[] {
  const network = solveNetwork(machine, state.at, state.supplyOn);
  machine.plan.loads.forEach(({ a, b }, index) => {
    const together = network.reference[a] === network.reference[b];
    state.re[index] = together ? network.re[a]! - network.re[b]! : 0;
    state.im[index] = together ? network.im[a]! - network.im[b]! : 0;
  });
  return network.shorted;
}
