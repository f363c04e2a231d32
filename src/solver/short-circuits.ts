/**
 * Which supplies a short circuit concerns, whatever the order in which they are written down. Closed contacts make one
 * node; supplies (each a star of its poles about its return) and earth are the edges between nodes. A ring of edges
 * whose voltages don't add up to nothing drives a current without limit, and so does every ring in the same block (a part
 * that no single node holds together): in an unbalanced block each edge lies on an unbalanced ring (T. Zaslavsky, Biased
 * graphs I, 1989).
 */
import { alongAxis } from './axes.ts';
import type { Machine } from './machine.ts';
import { NO_VOLTS, Potentials } from './potentials.ts';
import { polesThatHold } from './supplies.ts';

interface Edge {
  readonly a: number;
  readonly b: number;
  /** Index of the supply; -1 for a bond to earth. */
  readonly supply: number;
  /** Potential of `a` against `b`. */
  readonly difference: (axis: number) => number;
}

/** Groups of supplies short-circuited together, each by a block of its own. */
export function shortCircuits(
  machine: Machine,
  supplyOn: Uint8Array,
  nodeOf: (node: number) => number,
): readonly (readonly number[])[] {
  const edges = edgesOf(machine, supplyOn, nodeOf);
  return blocksOf(edges).flatMap((block) => {
    if (isBalanced(machine, block)) return [];
    const supplies = new Set(block.map(({ supply }) => supply).filter((supply) => supply >= 0));
    return [[...supplies].sort((a, b) => a - b)];
  });
}

function edgesOf(machine: Machine, supplyOn: Uint8Array, nodeOf: (node: number) => number): Edge[] {
  const { plan, axes } = machine;
  const earth = plan.nodes;
  return plan.supplies.flatMap((supply, index): Edge[] => {
    const common = nodeOf(supply.poles.at(-1)!.node);
    const found: Edge[] = [];
    for (const pole of polesThatHold(supply, supplyOn[index] === 1).slice(0, -1)) {
      const difference = (axis: number): number => alongAxis(axes, pole, axis);
      found.push({ a: nodeOf(pole.node), b: common, supply: index, difference });
    }
    if (supply.earthed) found.push({ a: common, b: earth, supply: -1, difference: NO_VOLTS });
    return found;
  });
}

/** Whether all rings of a block add up to nothing. */
function isBalanced(machine: Machine, block: readonly Edge[]): boolean {
  const potentials = new Potentials(machine.axes, machine.plan.nodes + 1);
  return block.every(({ a, b, difference }) => potentials.fix(a, b, difference));
}

/** Blocks of a multigraph by depth-first search (J. Hopcroft and R. Tarjan, 1973); an edge from a node to itself is one. */
function blocksOf(edges: readonly Edge[]): Edge[][] {
  const at = new Map<number, number[]>();
  edges.forEach(({ a, b }, index) => {
    for (const end of a === b ? [] : [a, b]) at.set(end, [...(at.get(end) ?? []), index]);
  });
  const blocks: Edge[][] = edges.filter(({ a, b }) => a === b).map((edge) => [edge]);
  const depth = new Map<number, number>();
  const stack: number[] = [];
  const visit = (node: number, cameBy: number, level: number): number => {
    depth.set(node, level);
    let low = level;
    for (const index of at.get(node)!) {
      if (index === cameBy) continue;
      const { a, b } = edges[index]!;
      const other = a === node ? b : a;
      const before = depth.get(other);
      if (before !== undefined) {
        if (before < level) stack.push(index);
        low = Math.min(low, before);
        continue;
      }
      const from = stack.push(index) - 1;
      const reach = visit(other, index, level + 1);
      low = Math.min(low, reach);
      if (reach >= level) blocks.push(stack.splice(from).map((edge) => edges[edge]!));
    }
    return low;
  };
  for (const node of at.keys()) if (!depth.has(node)) visit(node, -1, 0);
  return blocks;
}
