/**
 * The whole network at once, exactly: closed contacts and ideal sources join nodes into rigid groups with known
 * differences of potential (a union-find that carries an offset), what is left between the groups is resistors. Slower
 * than the islands and always right: it decides short circuits, joined supplies and meter readings, and the tests
 * hold the islands against it.
 */
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

/** The resistors between rigid groups: one group of each connected part is the reference, the others are unknown. */
function solveGroups(machine: Machine, potentials: Potentials): Omit<Network, 'shorted'> {
  const { plan } = machine;
  const groupOf = Int32Array.from({ length: plan.nodes }, (_, node) => potentials.find(node));
  const links = plan.loads.filter(({ a, b, siemens }) => siemens > 0 && groupOf[a] !== groupOf[b]);
  const reference = groupOf.slice();
  const lowest = (group: number): number => {
    let at = group;
    while (reference[at] !== at) at = reference[at]!;
    return at;
  };
  for (const { a, b } of links) {
    const one = lowest(groupOf[a]!);
    const other = lowest(groupOf[b]!);
    if (one !== other) reference[Math.max(one, other)] = Math.min(one, other);
  }
  const potentialRe = new Float64Array(plan.nodes);
  const potentialIm = new Float64Array(plan.nodes);
  solveOffsets(
    links.map(({ a, b, siemens }) => ({ a, b, siemens })),
    groupOf,
    lowest,
    potentials,
    potentialRe,
    potentialIm,
  );
  const re = new Float64Array(plan.nodes);
  const im = new Float64Array(plan.nodes);
  const references = new Int32Array(plan.nodes);
  for (let node = 0; node < plan.nodes; node++) {
    const group = groupOf[node]!;
    re[node] = potentialRe[group]! + potentials.re[node]!;
    im[node] = potentialIm[group]! + potentials.im[node]!;
    references[node] = lowest(group);
  }
  return { re, im, reference: references };
}

/**
 * Potentials of the groups. A resistor between two groups sees their difference plus a fixed offset (the potentials of
 * its ends against their roots), so each group with offsets is taken apart: its ends become held terminals where it is
 * the reference, and the normal equations are solved directly where several groups float against one another.
 */
function solveOffsets(
  links: readonly { a: number; b: number; siemens: number }[],
  groupOf: Int32Array,
  lowest: (group: number) => number,
  potentials: Potentials,
  re: Float64Array,
  im: Float64Array,
): void {
  const parts = new Map<number, (typeof links)[number][]>();
  for (const link of links) {
    const part = lowest(groupOf[link.a]!);
    const list = parts.get(part);
    if (list) list.push(link);
    else parts.set(part, [link]);
  }
  for (const [, members] of parts) {
    const groups = [...new Set(members.flatMap(({ a, b }) => [groupOf[a]!, groupOf[b]!]))];
    const rigid = groups.filter((group) =>
      members.some(({ a, b }) =>
        [a, b].some(
          (node) => groupOf[node] === group && (potentials.re[node] !== 0 || potentials.im[node] !== 0),
        ),
      ),
    );
    // With at most one group that has offsets, it is the reference: its nodes are held at their own potentials.
    if (rigid.length <= 1) {
      const reference = rigid[0] ?? groups[0]!;
      holdOneGroup(members, groupOf, reference, potentials, re, im);
    } else {
      solveDense(members, groups, groupOf, potentials, re, im);
    }
  }
}

function holdOneGroup(
  members: readonly { a: number; b: number; siemens: number }[],
  groupOf: Int32Array,
  reference: number,
  potentials: Potentials,
  re: Float64Array,
  im: Float64Array,
): void {
  const size = groupOf.length;
  // Points: a group's root, or the node itself for the ends that lie in the reference group.
  const point = (node: number): number => (groupOf[node] === reference ? size + node : groupOf[node]!);
  const pointRe = new Float64Array(2 * size);
  const pointIm = new Float64Array(2 * size);
  for (const { a, b } of members) {
    for (const node of [a, b]) {
      pointRe[size + node] = potentials.re[node]!;
      pointIm[size + node] = potentials.im[node]!;
    }
  }
  solveResistors(
    {
      a: members.map(({ a }) => point(a)),
      b: members.map(({ b }) => point(b)),
      siemens: members.map(({ siemens }) => siemens),
    },
    (at) => at >= size,
    pointRe,
    pointIm,
  );
  for (const { a, b } of members) {
    for (const node of [a, b]) {
      const group = groupOf[node]!;
      if (group === reference) continue;
      re[group] = pointRe[group]!;
      im[group] = pointIm[group]!;
    }
  }
}

/** Gaussian elimination with partial pivoting; the first group is the reference. */
function solveDense(
  members: readonly { a: number; b: number; siemens: number }[],
  groups: readonly number[],
  groupOf: Int32Array,
  potentials: Potentials,
  re: Float64Array,
  im: Float64Array,
): void {
  const place = new Map(groups.map((group, index) => [group, index - 1]));
  const size = groups.length - 1;
  const rows = Array.from({ length: size }, () => new Float64Array(size + 2));
  for (const { a, b, siemens } of members) {
    const rowA = place.get(groupOf[a]!)!;
    const rowB = place.get(groupOf[b]!)!;
    const offsetRe = potentials.re[a]! - potentials.re[b]!;
    const offsetIm = potentials.im[a]! - potentials.im[b]!;
    const stamp = (row: number, other: number, sign: number): void => {
      if (row < 0) return;
      const at = rows[row]!;
      at[row] = at[row]! + siemens;
      if (other >= 0) at[other] = at[other]! - siemens;
      at[size] = at[size]! - sign * siemens * offsetRe;
      at[size + 1] = at[size + 1]! - sign * siemens * offsetIm;
    };
    stamp(rowA, rowB, 1);
    stamp(rowB, rowA, -1);
  }
  for (let column = 0; column < size; column++) {
    let pivot = column;
    for (let row = column + 1; row < size; row++) {
      if (Math.abs(rows[row]![column]!) > Math.abs(rows[pivot]![column]!)) pivot = row;
    }
    [rows[column], rows[pivot]] = [rows[pivot]!, rows[column]!];
    const lead = rows[column]!;
    for (let row = 0; row < size; row++) {
      if (row === column) continue;
      const factor = rows[row]![column]! / lead[column]!;
      if (factor === 0) continue;
      for (let at = column; at < size + 2; at++) rows[row]![at] = rows[row]![at]! - factor * lead[at]!;
    }
  }
  groups.forEach((group, index) => {
    if (index === 0) return;
    const row = rows[index - 1]!;
    re[group] = row[size]! / row[index - 1]!;
    im[group] = row[size + 1]! / row[index - 1]!;
  });
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
