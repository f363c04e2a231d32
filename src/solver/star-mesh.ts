/**
 * Node voltages of a resistive network with some nodes held: unknown nodes are eliminated one by one by the star-mesh
 * transformation (A. Rosen, 1924), cheapest first, and found again in reverse order as the conductance-weighted mean of
 * their neighbours. All conductances stay positive, so nothing is lost to cancellation, and a tree costs linear time.
 */
export interface Resistors {
  readonly a: readonly number[];
  readonly b: readonly number[];
  readonly siemens: readonly number[];
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

/**
 * Fills in the potentials of the unknown nodes.
 *
 * @param held - says of a node whether its potential in `re` and `im` is given
 * @param re - potentials in volts, written for every unknown node that a resistor touches
 * @param im - imaginary parts
 * @returns the nodes that no resistor joins to a held node, directly or through others: their potential is set to 0,
 * or equal to one another's where resistors join them
 */
export function solveResistors(
  { a, b, siemens }: Resistors,
  held: (node: number) => boolean,
  re: Float64Array,
  im: Float64Array,
): number[] {
  const links = new Map<number, Map<number, number>>();
  for (let index = 0; index < a.length; index++) {
    const from = a[index]!;
    const to = b[index]!;
    const g = siemens[index]!;
    if (from === to || g === 0) continue;
    if (!held(from)) add(links, from, to, g);
    if (!held(to)) add(links, to, from, g);
  }
  const order: Eliminated[] = [];
  // Buckets by degree; a stale entry (degree changed since) is skipped when it comes up.
  const buckets: number[][] = [];
  const enter = (node: number): void => {
    const degree = links.get(node)!.size;
    while (buckets.length <= degree) buckets.push([]);
    buckets[degree]!.push(node);
  };
  for (const node of links.keys()) enter(node);
  for (let degree = 0; degree < buckets.length; ) {
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
    const sum = neighbours.reduce((total, [, g]) => total + g, 0);
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
  const floating = new Set<number>();
  for (let index = order.length - 1; index >= 0; index--) {
    const { node, neighbours } = order[index]!;
    let sum = 0;
    let sumRe = 0;
    let sumIm = 0;
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
  return [...floating];
}
