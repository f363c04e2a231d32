import type { Rows } from './rows.ts';

/**
 * Strongly connected components (Tarjan 1972), without recursion so that a long chain can't exhaust the stack.
 *
 * @param edges - of each vertex those that it leads to
 * @returns for each vertex the number of its component; a component has a smaller number than those that lead to it
 */
export function strongComponents({ start, list }: Rows): Int32Array {
  const size = start.length - 1;
  const component = new Int32Array(size).fill(-1);
  const index = new Int32Array(size).fill(-1);
  const low = new Int32Array(size);
  // Vertices that have no component yet, in the order they were come to; and those on the way to where the search is.
  const open = new Int32Array(size);
  const way = new Int32Array(size);
  const next = start.slice(0, size);
  let opened = 0;
  let depth = 0;
  let counter = 0;
  let components = 0;
  const enter = (vertex: number): void => {
    index[vertex] = counter;
    low[vertex] = counter++;
    open[opened++] = vertex;
    way[depth++] = vertex;
  };
  for (let root = 0; root < size; root++) {
    if (index[root] !== -1) continue;
    enter(root);
    while (depth > 0) {
      const vertex = way[depth - 1]!;
      const edge = next[vertex]!;
      if (edge < start[vertex + 1]!) {
        next[vertex] = edge + 1;
        const other = list[edge]!;
        if (index[other] === -1) enter(other);
        else if (component[other] === -1) low[vertex] = Math.min(low[vertex]!, index[other]!);
        continue;
      }
      depth--;
      if (depth > 0) {
        const parent = way[depth - 1]!;
        low[parent] = Math.min(low[parent]!, low[vertex]!);
      }
      if (low[vertex] !== index[vertex]) continue;
      for (;;) {
        const member = open[--opened]!;
        component[member] = components;
        if (member === vertex) break;
      }
      components++;
    }
  }
  return component;
}
