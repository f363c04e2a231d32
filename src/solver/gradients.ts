/**
 * The part of a network that elimination would fill up, solved by conjugate gradients (M. R. Hestenes and E. Stiefel,
 * 1952; scaled by the diagonal) to the precision of the numbers: hundreds of loads that all hang on one another, as no
 * drawing has them but a hostile file may.
 */

/** A node's links to others, `known` ones with their potentials among them. */
export type Links = ReadonlyMap<number, ReadonlyMap<number, number>>;

interface Core {
  readonly nodes: readonly number[];
  /** Of node `i`: links `start[i]` up to `start[i + 1]`. */
  readonly start: Int32Array;
  readonly other: Int32Array;
  readonly siemens: Float64Array;
  readonly diagonal: Float64Array;
  readonly current: Float64Array;
}

/** Nodes of parts that hang on no known node; the first of each such part is taken to be at 0. */
function loose(links: Links): { floating: number[]; pinned: Set<number> } {
  const floating: number[] = [];
  const pinned = new Set<number>();
  const seen = new Set<number>();
  for (const start of links.keys()) {
    if (seen.has(start)) continue;
    seen.add(start);
    const part = [start];
    let held = false;
    for (const node of part) {
      for (const other of links.get(node)!.keys()) {
        if (!links.has(other)) held = true;
        else if (!seen.has(other)) {
          seen.add(other);
          part.push(other);
        }
      }
    }
    if (held) continue;
    floating.push(...part);
    pinned.add(start);
  }
  return { floating, pinned };
}

function coreOf(
  links: Links,
  pinned: ReadonlySet<number>,
  currents: ReadonlyMap<number, number>,
  volts: Float64Array,
): Core {
  const nodes = [...links.keys()].filter((node) => !pinned.has(node));
  const place = new Map(nodes.map((node, index) => [node, index]));
  const start = new Int32Array(nodes.length + 1);
  const other: number[] = [];
  const siemens: number[] = [];
  const diagonal = new Float64Array(nodes.length);
  const current = new Float64Array(nodes.length);
  nodes.forEach((node, index) => {
    let sum = 0;
    let amps = currents.get(node) ?? 0;
    for (const [neighbour, g] of links.get(node)!) {
      sum += g;
      const at = place.get(neighbour);
      if (at === undefined) {
        amps += g * volts[neighbour]!;
      } else {
        other.push(at);
        siemens.push(g);
      }
    }
    start[index + 1] = other.length;
    diagonal[index] = sum;
    current[index] = amps;
  });
  return {
    nodes,
    start,
    other: Int32Array.from(other),
    siemens: Float64Array.from(siemens),
    diagonal,
    current,
  };
}

const dot = (one: Float64Array, other: Float64Array): number => {
  let sum = 0;
  for (let index = 0; index < one.length; index++) sum += one[index]! * other[index]!;
  return sum;
};

/** The potentials of the core's nodes, and how many rounds it took. */
function potentials({ start, other, siemens, diagonal, current }: Core): {
  x: Float64Array;
  rounds: number;
} {
  const size = diagonal.length;
  const x = new Float64Array(size);
  const residual = current.slice();
  const scaled = residual.map((value, index) => value / diagonal[index]!);
  const direction = scaled.slice();
  const image = new Float64Array(size);
  let measure = dot(residual, scaled);
  const enough = measure * 1e-30;
  let rounds = 0;
  for (; rounds < 4 * size + 100 && measure > enough && measure > 0; rounds++) {
    for (let row = 0; row < size; row++) {
      let sum = diagonal[row]! * direction[row]!;
      for (let at = start[row]!; at < start[row + 1]!; at++) sum -= siemens[at]! * direction[other[at]!]!;
      image[row] = sum;
    }
    const step = measure / dot(direction, image);
    for (let row = 0; row < size; row++) {
      x[row]! += step * direction[row]!;
      residual[row]! -= step * image[row]!;
      scaled[row] = residual[row]! / diagonal[row]!;
    }
    const next = dot(residual, scaled);
    const keep = next / measure;
    for (let row = 0; row < size; row++) direction[row] = scaled[row]! + keep * direction[row]!;
    measure = next;
  }
  return { x, rounds };
}

/** Fills in the potentials of all nodes of `links` along one axis; the others are known. */
export function solveCore(
  links: Links,
  currents: ReadonlyMap<number, number>,
  volts: Float64Array,
): { floating: readonly number[]; steps: number } {
  const { floating, pinned } = loose(links);
  for (const node of pinned) volts[node] = 0;
  const core = coreOf(links, pinned, currents, volts);
  const { x, rounds } = potentials(core);
  core.nodes.forEach((node, index) => {
    volts[node] = x[index]!;
  });
  return { floating, steps: rounds * (core.other.length + 8 * core.nodes.length) };
}
