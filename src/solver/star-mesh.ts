/**
 * Node voltages of a resistive network with some nodes held: unknown nodes are eliminated one by one by the star-mesh
 * transformation (A. Rosen, 1924), fewest neighbours first, and found again in reverse order as the conductance-weighted
 * mean of their neighbours. All conductances stay positive, so nothing is lost to cancellation, and a tree costs linear
 * time. Where every node that is left has very many neighbours, the rest is left to gradients.ts.
 */
import { solveCore } from './gradients.ts';

/** Neighbours from which on a node isn't eliminated any more. */
const TOO_MANY_NEIGHBOURS = 48;

export interface Resistors {
  readonly a: readonly number[];
  readonly b: readonly number[];
  readonly siemens: readonly number[];
  /** Volts that each resistor sees from `a` to `b` on top of the difference of the nodes' potentials. */
  readonly extraRe?: readonly number[];
  readonly extraIm?: readonly number[];
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
}

const add = (links: Map<number, Map<number, number>>, a: number, b: number, g: number): void => {
  let at = links.get(a);
  if (!at) {
    at = new Map();
    links.set(a, at);
  }
  at.set(b, (at.get(b) ?? 0) + g);
};

/** Currents that flow into nodes from outside, driven by the extra volts. */
function injections({ a, b, siemens, extraRe, extraIm }: Resistors): Map<number, [re: number, im: number]> {
  const currents = new Map<number, [number, number]>();
  if (!extraRe) return currents;
  const inject = (node: number, re: number, im: number): void => {
    const at = currents.get(node);
    if (at) {
      at[0] += re;
      at[1] += im;
    } else currents.set(node, [re, im]);
  };
  for (let index = 0; index < a.length; index++) {
    const re = siemens[index]! * extraRe[index]!;
    const im = siemens[index]! * (extraIm?.[index] ?? 0);
    if (a[index] === b[index] || (re === 0 && im === 0)) continue;
    inject(a[index]!, -re, -im);
    inject(b[index]!, re, im);
  }
  return currents;
}

/**
 * Fills in the potentials of the unknown nodes.
 *
 * @param held - says of a node whether its potential in `re` and `im` is given
 * @param re - potentials in volts, written for every unknown node that a resistor touches
 * @param im - imaginary parts
 */
export function solveResistors(
  resistors: Resistors,
  held: (node: number) => boolean,
  re: Float64Array,
  im: Float64Array,
): Solved {
  const { a, b, siemens } = resistors;
  const links = new Map<number, Map<number, number>>();
  for (let index = 0; index < a.length; index++) {
    const from = a[index]!;
    const to = b[index]!;
    const g = siemens[index]!;
    if (from === to || g === 0) continue;
    if (!held(from)) add(links, from, to, g);
    if (!held(to)) add(links, to, from, g);
  }
  const currents = injections(resistors);
  const { order, steps } = eliminate(links, currents);
  const core = links.size > 0 ? solveCore(links, currents, re, im) : undefined;
  const floating = new Set<number>(core?.floating);
  for (let index = order.length - 1; index >= 0; index--) {
    const { node, neighbours } = order[index]!;
    const [currentRe, currentIm] = currents.get(node) ?? [0, 0];
    let sum = 0;
    let sumRe = currentRe;
    let sumIm = currentIm;
    let loose = true;
    for (const [other, g] of neighbours) {
      sum += g;
      sumRe += g * re[other]!;
      sumIm += g * im[other]!;
      if (!floating.has(other)) loose = false;
    }
    re[node] = sum === 0 ? 0 : sumRe / sum;
    im[node] = sum === 0 ? 0 : sumIm / sum;
    if (loose) floating.add(node);
  }
  return { floating: [...floating], steps: steps + (core?.steps ?? 0) };
}

/** Takes nodes out one by one; what each was joined to is kept in the order they went. What is left stays in `links`. */
function eliminate(
  links: Map<number, Map<number, number>>,
  currents: Map<number, [re: number, im: number]>,
): { order: Eliminated[]; steps: number } {
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
    order.push({ node, neighbours });
    links.delete(node);
    steps += 8 + degree * degree * 4;
    const sum = neighbours.reduce((total, [, g]) => total + g, 0);
    const current = currents.get(node);
    for (const [other, g] of neighbours) {
      links.get(other)?.delete(node);
      if (!current || !links.has(other)) continue;
      const share = currents.get(other);
      if (share) {
        share[0] += (g / sum) * current[0];
        share[1] += (g / sum) * current[1];
      } else currents.set(other, [(g / sum) * current[0], (g / sum) * current[1]]);
    }
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
