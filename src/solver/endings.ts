/** What a graph of reachable states can come to: outcomes of the general multiple winner analysis. */
import { rowsOf, strongComponents } from '../graph/index.ts';
import type { State } from './state.ts';

/** One way it can end: a state that rests, or the states that it keeps going through. */
export interface Ending {
  readonly states: readonly State[];
  /** Of the states it keeps going through these are only some: it was reasoned out, not explored. */
  readonly sampled?: boolean;
}

/** States, and for each the numbers of those that can follow. `left`: explored elsewhere, so nothing ends here. */
export interface Graph {
  readonly states: readonly State[];
  readonly edges: readonly (readonly number[])[];
  readonly left: ReadonlySet<number>;
}

/**
 * The endings of a graph: its final components, and cycles that could go on for ever although a way leads out. A cycle
 * passes away (is transient) when some mechanism is moving in the same way all through it: it will get there some day.
 */
export function endingsOf({ states, edges, left }: Graph, group: readonly number[]): Ending[] {
  const component = strongComponents(rowsOf(edges));
  const members = new Map<number, number[]>();
  component.forEach((number, vertex) => {
    const list = members.get(number);
    if (list) list.push(vertex);
    else members.set(number, [vertex]);
  });
  const endings: Ending[] = [];
  for (const [number, vertices] of members) {
    if (vertices.length === 1 && left.has(vertices[0]!)) continue;
    const final = vertices.every((vertex) => edges[vertex]!.every((to) => component[to] === number));
    const found = vertices.map((vertex) => states[vertex]!);
    if (!final && (vertices.length === 1 || passesAway(found, group))) continue;
    endings.push({ states: found });
  }
  return endings;
}

const passesAway = (states: readonly State[], group: readonly number[]): boolean =>
  group.some((mechanism) => {
    const { at, goal } = states[0]!;
    return (
      at[mechanism] !== goal[mechanism] &&
      states.every(
        (state) => state.at[mechanism] === at[mechanism] && state.goal[mechanism] === goal[mechanism],
      )
    );
  });
