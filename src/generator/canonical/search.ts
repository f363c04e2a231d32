/**
 * The canonical form of a coloured graph by individualisation and refinement (B. McKay and A. Piperno, Practical graph
 * isomorphism II, Journal of Symbolic Computation 60, 2014): where refining leaves vertices alike, each of them is singled out
 * in turn and the least result taken, but for those that an automorphism found so far carries onto one that was tried.
 * Vertices that are alone in their cell fall out of the graph, and what falls apart is dealt with part by part (component
 * recursion; T. Junttila and P. Kaski, 2011), so that many equal branches cost no more than one.
 */
import { type Graph, isAutomorphism, within } from './graph.ts';
import { type Effort, Partition } from './partition.ts';

export interface Solved {
  /** Equal for two graphs exactly when they are the same. */
  readonly form: readonly number[];
  /** The vertices as the form has them: the same places in two equal forms are the same vertex of the graph. */
  readonly order: readonly number[];
  /** Of each vertex another one that some automorphism carries onto it, or itself: a forest. */
  readonly orbits: Int32Array;
}

export function compare(one: readonly number[], other: readonly number[]): number {
  const length = Math.min(one.length, other.length);
  for (let at = 0; at < length; at++) if (one[at] !== other[at]) return one[at]! - other[at]!;
  return one.length - other.length;
}

function rootOf(orbits: Int32Array, vertex: number): number {
  let root = vertex;
  while (orbits[root] !== root) {
    orbits[root] = orbits[orbits[root]!]!;
    root = orbits[root]!;
  }
  return root;
}

const join = (orbits: Int32Array, one: number, other: number): void => {
  orbits[rootOf(orbits, one)] = rootOf(orbits, other);
};

const alone = (size: number): Int32Array => Int32Array.from({ length: size }, (_, vertex) => vertex);

/** Sorts what stands in a list from a place on; mostly a few numbers. */
function sortTail(list: number[], begin: number): void {
  if (list.length - begin > 24) {
    const tail = Int32Array.from(list.slice(begin)).sort();
    for (let at = 0; at < tail.length; at++) list[begin + at] = tail[at]!;
    return;
  }
  for (let at = begin + 1; at < list.length; at++) {
    const value = list[at]!;
    let place = at;
    for (; place > begin && list[place - 1]! > value; place--) list[place] = list[place - 1]!;
    list[place] = value;
  }
}

/** Everything that an equitable partition says: of each cell how large it is, and which colours are around its vertices. */
export function quotient({ from, ends }: Graph, { order, colours, sizes }: Partition): number[] {
  const told = [0];
  for (let colour = 0; colour < order.length; colour += sizes[colour]!) {
    const vertex = order[colour]!;
    const [first, last] = [from[vertex]!, from[vertex + 1]!];
    told.push(sizes[colour]!, last - first);
    const begin = told.length;
    for (let edge = first; edge < last; edge++) told.push(colours[ends[edge]!]!);
    sortTail(told, begin);
  }
  told[0] = told.length;
  return told;
}

/** The connected parts of what is left when vertices that are alone in their cell are taken out, each in the order of colours. */
function partsOf({ from, ends }: Graph, { order, colours, sizes }: Partition): number[][] {
  const partOf = new Int32Array(order.length).fill(-1);
  const parts: number[][] = [];
  const isAlone = (vertex: number): boolean => sizes[colours[vertex]!] === 1;
  for (const start of order) {
    if (isAlone(start) || partOf[start]! >= 0) continue;
    const open = [start];
    partOf[start] = parts.length;
    for (const vertex of open) {
      for (let edge = from[vertex]!; edge < from[vertex + 1]!; edge++) {
        const other = ends[edge]!;
        if (isAlone(other) || partOf[other]! >= 0) continue;
        partOf[other] = parts.length;
        open.push(other);
      }
    }
    parts.push([]);
  }
  for (const vertex of order) if (partOf[vertex]! >= 0) parts[partOf[vertex]!]!.push(vertex);
  return parts;
}

/** One part as a graph of its own. */
function partAlone(
  graph: Graph,
  colours: Int32Array,
  vertices: readonly number[],
  placeOf: Int32Array,
): { readonly inner: Graph; readonly partition: Partition; readonly names: number[] } {
  const cells: number[][] = [];
  const names: number[] = [];
  let last = -1;
  vertices.forEach((vertex, place) => {
    const colour = colours[vertex]!;
    if (colour !== last) {
      cells.push([]);
      names.push(colour);
      last = colour;
    }
    cells.at(-1)!.push(place);
  });
  const own = names.flatMap((name, cell) => [name, cells[cell]!.length]);
  return { inner: within(graph, vertices, placeOf), partition: Partition.of(cells), names: own };
}

/** A graph whose partition is equitable; null when it takes more effort than is left. */
export function solve(
  graph: Graph,
  partition: Partition,
  effort: Effort,
  told: readonly number[] = quotient(graph, partition),
): Solved | null {
  if (effort.left <= 0) return null;
  if (partition.isDiscrete) return { form: told, order: [...partition.order], orbits: alone(graph.size) };
  const parts = partsOf(graph, partition);
  if (parts.length === 1 && parts[0]!.length === graph.size) return branch(graph, partition, effort, told);
  const orbits = alone(graph.size);
  const placeOf = new Int32Array(graph.size).fill(-1);
  const solved: { form: number[]; order: number[] }[] = [];
  for (const vertices of parts) {
    effort.left -= vertices.length;
    const { inner, partition: own, names } = partAlone(graph, partition.colours, vertices, placeOf);
    effort.left -= inner.ends.length;
    const part = solve(inner, own, effort);
    if (!part) return null;
    part.orbits.forEach((to, place) => {
      join(orbits, vertices[place]!, vertices[to]!);
    });
    solved.push({
      form: [names.length, ...names, ...part.form],
      order: part.order.map((place) => vertices[place]!),
    });
  }
  solved.sort((one, other) => compare(one.form, other.form));
  const form = [...told];
  const order = [...partition.order].filter((vertex) => partition.sizes[partition.colours[vertex]!] === 1);
  solved.forEach((part, at) => {
    form.push(part.form.length);
    for (const number of part.form) form.push(number);
    order.push(...part.order);
    const before = solved[at - 1];
    if (before && compare(before.form, part.form) === 0)
      part.order.forEach((vertex, place) => {
        join(orbits, vertex, before.order[place]!);
      });
  });
  return { form, order, orbits };
}

/** Singles out each vertex of the target cell in turn; where automorphisms carry one onto another, one of them. */
function branch(graph: Graph, partition: Partition, effort: Effort, told: readonly number[]): Solved | null {
  const orbits = alone(graph.size);
  const tried: number[] = [];
  let best: { vertex: number; told: readonly number[]; solved: Solved } | undefined;
  for (const vertex of partition.cell(partition.target)) {
    if (tried.some((other) => rootOf(orbits, other) === rootOf(orbits, vertex))) continue;
    tried.push(vertex);
    const child = partition.copy(effort);
    child.singleOut(vertex, graph, effort);
    if (effort.left <= 0) return null;
    const own = quotient(graph, child);
    effort.left -= own.length;
    const order = best ? compare(own, best.told) : -1;
    if (order > 0) continue;
    if (best && order === 0) {
      const image = carried(graph, partition, best.vertex, vertex, effort);
      if (image) {
        image.forEach((to, from) => {
          join(orbits, from, to);
        });
        continue;
      }
    }
    const solved = solve(graph, child, effort, own);
    if (!solved) return null;
    solved.orbits.forEach((to, from) => {
      join(orbits, from, to);
    });
    const against = best ? compare(solved.form, best.solved.form) : -1;
    if (against === 0)
      solved.order.forEach((to, place) => {
        join(orbits, best!.solved.order[place]!, to);
      });
    if (against < 0) best = { vertex, told: own, solved };
  }
  const { form, order } = best!.solved;
  return { form: [...told, ...form], order, orbits };
}

/**
 * An automorphism that carries one vertex onto another, found by going down from both alike, without turning back; null where
 * that finds none, which doesn't mean that there is none.
 */
function carried(
  graph: Graph,
  partition: Partition,
  from: number,
  to: number,
  effort: Effort,
): Int32Array | null {
  const [here, there] = [partition.copy(effort), partition.copy(effort)];
  let [vertex, image] = [from, to];
  for (;;) {
    if (here.singleOut(vertex, graph, effort) !== there.singleOut(image, graph, effort)) return null;
    if (here.cells !== there.cells || effort.left <= 0) return null;
    if (here.isDiscrete) break;
    const { target } = here;
    if (there.target !== target) return null;
    vertex = here.cell(target)[0]!;
    image = there.has(target, vertex) ? vertex : there.cell(target)[0]!;
  }
  const map = new Int32Array(graph.size);
  here.order.forEach((each, place) => {
    map[each] = there.order[place]!;
  });
  effort.left -= graph.ends.length;
  return isAutomorphism(graph, map) ? map : null;
}
