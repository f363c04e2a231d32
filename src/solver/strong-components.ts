/**
 * Strongly connected components (Tarjan 1972), without recursion so that a long chain can't exhaust the stack.
 *
 * @returns for each of the `size` vertices the number of its component; a component has a smaller number than those
 * that lead to it
 */
export function strongComponents(size: number, next: (vertex: number) => readonly number[]): Int32Array {
  const component = new Int32Array(size).fill(-1);
  const index = new Int32Array(size).fill(-1);
  const low = new Int32Array(size);
  const stack: number[] = [];
  const onStack = new Uint8Array(size);
  let counter = 0;
  let components = 0;
  for (let root = 0; root < size; root++) {
    if (index[root] !== -1) continue;
    const work: { vertex: number; edges: readonly number[]; at: number }[] = [];
    const enter = (vertex: number): void => {
      index[vertex] = counter;
      low[vertex] = counter++;
      stack.push(vertex);
      onStack[vertex] = 1;
      work.push({ vertex, edges: next(vertex), at: 0 });
    };
    enter(root);
    while (work.length > 0) {
      const frame = work.at(-1)!;
      const { vertex } = frame;
      if (frame.at < frame.edges.length) {
        const other = frame.edges[frame.at++]!;
        if (index[other] === -1) enter(other);
        else if (onStack[other]) low[vertex] = Math.min(low[vertex]!, index[other]!);
        continue;
      }
      work.pop();
      const parent = work.at(-1);
      if (parent) low[parent.vertex] = Math.min(low[parent.vertex]!, low[vertex]!);
      if (low[vertex] !== index[vertex]) continue;
      for (;;) {
        const member = stack.pop()!;
        onStack[member] = 0;
        component[member] = components;
        if (member === vertex) break;
      }
      components++;
    }
  }
  return component;
}
