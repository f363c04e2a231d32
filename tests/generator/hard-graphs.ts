/** Graphs on which telling things apart is hard, from the literature; named beside each. */
export type Edges = readonly (readonly number[])[];

const made = (size: number, pairs: Iterable<readonly [number, number]>): Edges => {
  const edges: number[][] = Array.from({ length: size }, () => []);
  for (const [one, other] of pairs) {
    edges[one]!.push(other);
    edges[other]!.push(one);
  }
  return edges;
};

/** Every pair that fits. */
function* pairs(
  size: number,
  fits: (one: number, other: number) => boolean,
): Generator<readonly [number, number]> {
  for (let one = 0; one < size; one++)
    for (let other = 0; other < one; other++) if (fits(one, other)) yield [one, other];
}

export const complete = (size: number): Edges =>
  made(
    size,
    pairs(size, () => true),
  );

/** The graph whose edges are the bits of a number. */
export function ofBits(size: number, bits: number): Edges {
  let bit = 0;
  return made(
    size,
    pairs(size, () => ((bits >> bit++) & 1) === 1),
  );
}

/** Strongly regular with the parameters (16, 6, 2, 2), as the Shrikhande graph is: rooks on a board of four by four. */
export const rooks = (side: number): Edges =>
  made(
    side * side,
    pairs(
      side * side,
      (one, other) => Math.floor(one / side) === Math.floor(other / side) || one % side === other % side,
    ),
  );

/** S. Shrikhande, 1959: the other one with the parameters (16, 6, 2, 2). */
export const shrikhande = (): Edges => {
  const steps = new Set(['0,1', '0,3', '1,0', '3,0', '1,1', '3,3']);
  const step = (one: number, other: number): string =>
    `${((one >> 2) - (other >> 2) + 4) % 4},${((one & 3) - (other & 3) + 4) % 4}`;
  return made(
    16,
    pairs(16, (one, other) => steps.has(step(one, other))),
  );
};

/** Points and lines of the projective plane over the field of a prime order: many automorphisms, and few that are seen early. */
export function projectivePlane(order: number): Edges {
  const points: [number, number, number][] = [[0, 0, 1]];
  for (let one = 0; one < order; one++) {
    points.push([0, 1, one]);
    for (let other = 0; other < order; other++) points.push([1, one, other]);
  }
  const lies = (point: number, line: number): boolean =>
    points[point]!.reduce((sum, value, at) => sum + value * points[line]![at]!, 0) % order === 0;
  const size = points.length;
  return made(
    2 * size,
    pairs(2 * size, (one, other) => one >= size && other < size && lies(other, one - size)),
  );
}

/**
 * J. Cai, M. Fürer, N. Immerman, An optimal lower bound on the number of variables for graph identification, 1992: over a ring
 * with its diameters; straight and twisted are different, and refining alone never shows it, nor does singling out a few.
 */
export function caiFuererImmerman(around: number, twisted: boolean): Edges {
  const base: [number, number][] = [];
  for (let at = 0; at < around; at++) {
    base.push([at, (at + 1) % around]);
    if (at < around / 2) base.push([at, at + around / 2]);
  }
  const found: [number, number][] = [];
  base.forEach((_, edge) => {
    const twist = twisted && edge === 0 ? 1 : 0;
    for (const side of [0, 1]) found.push([4 * edge + side, 4 * edge + 2 + (side ^ twist)]);
  });
  let size = 4 * base.length;
  for (let at = 0; at < around; at++) {
    const ends = base.flatMap(([one, other], edge) =>
      one === at ? [4 * edge] : other === at ? [4 * edge + 2] : [],
    );
    for (const even of [0b000, 0b011, 0b101, 0b110]) {
      ends.forEach((end, index) => {
        found.push([size, end + ((even >> index) & 1)]);
      });
      size++;
    }
  }
  return made(size, found);
}

/** Several graphs beside one another. */
export function beside(...graphs: readonly Edges[]): Edges {
  const all: number[][] = [];
  for (const graph of graphs) {
    const from = all.length;
    for (const ends of graph) all.push(ends.map((end) => from + end));
  }
  return all;
}

/** The same graph with its vertices in another order. */
export function reordered(edges: Edges, order: readonly number[]): Edges {
  const moved: number[][] = edges.map(() => []);
  edges.forEach((ends, vertex) => {
    moved[order[vertex]!] = ends.map((end) => order[end]!);
  });
  return moved;
}
