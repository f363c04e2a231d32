/** A graph in flat lists, for work that goes over it many times. */
export interface Graph {
  readonly size: number;
  /** The neighbours of vertex v are ends[from[v]] to ends[from[v + 1] - 1], twice where two edges join the same two. */
  readonly from: Int32Array;
  readonly ends: Int32Array;
}

export function graphOf(edges: readonly (readonly number[])[]): Graph {
  const from = new Int32Array(edges.length + 1);
  edges.forEach((list, vertex) => {
    from[vertex + 1] = from[vertex]! + list.length;
  });
  const ends = new Int32Array(from[edges.length]!);
  edges.forEach((list, vertex) => {
    ends.set(list, from[vertex]);
  });
  return { size: edges.length, from, ends };
}

/**
 * The graph of these vertices alone, each by its place in the list.
 *
 * @param placeOf - room for as many numbers as the graph has vertices, all -1; left so
 */
export function within(graph: Graph, vertices: readonly number[], placeOf: Int32Array): Graph {
  vertices.forEach((vertex, place) => {
    placeOf[vertex] = place;
  });
  const from = new Int32Array(vertices.length + 1);
  const ends: number[] = [];
  vertices.forEach((vertex, place) => {
    for (let edge = graph.from[vertex]!; edge < graph.from[vertex + 1]!; edge++) {
      const other = placeOf[graph.ends[edge]!]!;
      if (other >= 0) ends.push(other);
    }
    from[place + 1] = ends.length;
  });
  for (const vertex of vertices) placeOf[vertex] = -1;
  return { size: vertices.length, from, ends: Int32Array.from(ends) };
}

/** Whether a mapping of the vertices onto themselves leaves the graph as it is, edge by edge. */
export function isAutomorphism({ size, from, ends }: Graph, image: Int32Array): boolean {
  const count = new Int32Array(size);
  for (let vertex = 0; vertex < size; vertex++) {
    const to = image[vertex]!;
    if (from[vertex + 1]! - from[vertex]! !== from[to + 1]! - from[to]!) return false;
    for (let edge = from[vertex]!; edge < from[vertex + 1]!; edge++) count[image[ends[edge]!]!]!++;
    let fits = true;
    for (let edge = from[to]!; edge < from[to + 1]!; edge++) if (--count[ends[edge]!]! < 0) fits = false;
    // With as many edges on both sides, one that is missing leaves another one below nothing.
    if (!fits) return false;
  }
  return true;
}
