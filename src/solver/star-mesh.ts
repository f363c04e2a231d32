/**
 * Node voltages of a resistive network with some nodes held: unknown nodes are eliminated one by one by the star-mesh
 * transformation (A. Rosen, 1924), fewest neighbours first, and found again in reverse order as the conductance-weighted
 * mean of their neighbours. All conductances stay positive, so nothing is lost to cancellation, and a tree costs linear
 * time. Where every node that is left has very many neighbours, the rest is left to gradients.ts. The network is eliminated
 * once; each axis of the voltages is then found for itself (superposition).
 */
import type { Volts } from './axes.ts';
import { solveCore } from './gradients.ts';

/** Neighbours from which on a node isn't eliminated any more. */
const TOO_MANY_NEIGHBOURS = 48;

export interface Resistors {
  readonly a: readonly number[];
  readonly b: readonly number[];
  readonly siemens: readonly number[];
  /** Volts that each resistor sees from `a` to `b` on top of the difference of the nodes' potentials, along each axis. */
  readonly extra?: readonly (readonly number[])[];
}

export interface Solved {
  /**
   * The nodes that no resistor joins to a held node, directly or through others: one of each such part is set to 0, the
   * others against it.
   */
  readonly floating: readonly number[];
  /** Roughly what it cost. */
  readonly steps: number;
}

interface Eliminated {
  readonly node: number;
  readonly neighbours: readonly (readonly [number, number])[];
  /** Conductance of all neighbours together. */
  readonly sum: number;
}

type Links = Map<number, Map<number, number>>;

const add = (links: Links, a: number, b: number, g: number): void => {
  let at = links.get(a);
  if (!at) {
    at = new Map();
    links.set(a, at);
  }
  at.set(b, (at.get(b) ?? 0) + g);
};

/** Currents that flow into nodes from outside, driven by the extra volts along one axis. */
function injections({ a, b, siemens, extra }: Resistors, axis: number): Map<number, number> {
  const currents = new Map<number, number>();
  const volts = extra?.[axis];
  if (!volts) return currents;
  const inject = (node: number, amps: number): void => {
    currents.set(node, (currents.get(node) ?? 0) + amps);
  };
  for (let index = 0; index < a.length; index++) {
    const amps = siemens[index]! * volts[index]!;
    if (a[index] === b[index] || amps === 0) continue;
    inject(a[index]!, -amps);
    inject(b[index]!, amps);
  }
  return currents;
}

/**
 * Fills in the potentials of the unknown nodes.
 *
 * @param held - says of a node whether its potential is given
 * @param volts - potentials along each axis, written for every unknown node that a resistor touches
 */
export function solveResistors(resistors: Resistors, held: (node: number) => boolean, volts: Volts): Solved {
  const { a, b, siemens } = resistors;
  const links: Links = new Map();
  for (let index = 0; index < a.length; index++) {
    const from = a[index]!;
    const to = b[index]!;
    const g = siemens[index]!;
    if (from === to || g === 0) continue;
    if (!held(from)) add(links, from, to, g);
    if (!held(to)) add(links, to, from, g);
  }
  const { order, steps } = eliminate(links);
  const floating = new Set<number>();
  let spent = steps;
  volts.forEach((along, axis) => {
    const currents = injections(resistors, axis);
    if (currents.size > 0) passOn(order, currents);
    if (links.size > 0) {
      const core = solveCore(links, currents, along);
      spent += core.steps;
      for (const node of core.floating) floating.add(node);
    }
    for (let index = order.length - 1; index >= 0; index--) {
      const { node, neighbours, sum } = order[index]!;
      let amps = currents.get(node) ?? 0;
      let loose = true;
      for (const [other, g] of neighbours) {
        amps += g * along[other]!;
        if (!floating.has(other)) loose = false;
      }
      along[node] = sum === 0 ? 0 : amps / sum;
      if (loose) floating.add(node);
    }
  });
  return { floating: [...floating], steps: spent };
}

/** What flows into a node that is taken out flows into its neighbours instead, by their conductances. */
function passOn(order: readonly Eliminated[], currents: Map<number, number>): void {
  for (const { node, neighbours, sum } of order) {
    const amps = currents.get(node);
    if (amps === undefined) continue;
    for (const [other, g] of neighbours) currents.set(other, (currents.get(other) ?? 0) + (g / sum) * amps);
  }
}

/** Takes nodes out one by one; what each was joined to is kept in the order they went. What is left stays in `links`. */
function eliminate(links: Links): { order: Eliminated[]; steps: number } {
  const order: Eliminated[] = [];
  let steps = 0;
  // Buckets by degree; a stale entry (degree changed since) is skipped when it comes up.
  const buckets: number[][] = [];
  const enter = (node: number): void => {
    const degree = links.get(node)!.size;
    while (buckets.length <= degree) buckets.push([]);
    buckets[degree]!.push(node);
  };
  for (const node of links.keys()) enter(node);
  for (let degree = 0; degree < buckets.length && degree < TOO_MANY_NEIGHBOURS; ) {
    const node = buckets[degree]!.pop();
    if (node === undefined) {
      degree++;
      continue;
    }
    const star = links.get(node);
    if (!star || star.size !== degree) continue;
    const neighbours = [...star];
    const sum = neighbours.reduce((total, [, g]) => total + g, 0);
    order.push({ node, neighbours, sum });
    links.delete(node);
    steps += 8 + degree * degree * 4;
    for (const [other] of neighbours) links.get(other)?.delete(node);
    for (let one = 0; one < neighbours.length; one++) {
      const [p, gp] = neighbours[one]!;
      for (let two = one + 1; two < neighbours.length; two++) {
        const [q, gq] = neighbours[two]!;
        const g = (gp * gq) / sum;
        if (links.has(p)) add(links, p, q, g);
        if (links.has(q)) add(links, q, p, g);
      }
    }
    let lowest = degree;
    for (const [other] of neighbours) {
      const rest = links.get(other);
      if (!rest) continue;
      enter(other);
      lowest = Math.min(lowest, rest.size);
    }
    degree = lowest;
  }
  return { order, steps };
}
