/** Which parts hang together in an island, and the numbers of an island's points. */
import { Joining } from '../graph/index.ts';
import { deadEnds } from './dead-ends.ts';
import type { Machine } from './machine.ts';
import { feeds, type Rails } from './rails.ts';

/** Switches and loads that lie in islands, as columns: global index, ends, and which of the two they are. */
export interface Parts {
  readonly a: number[];
  readonly b: number[];
  readonly index: number[];
  readonly load: boolean[];
}

/** All switches that may carry a current, but the feeding ones; then all loads. */
export function partsOf(machine: Machine): Parts {
  const parts: Parts = { a: [], b: [], index: [], load: [] };
  const add = (a: number, b: number, index: number, load: boolean): void => {
    parts.a.push(a);
    parts.b.push(b);
    parts.index.push(index);
    parts.load.push(load);
  };
  const idle = deadEnds(machine.plan);
  machine.plan.switches.forEach(({ a, b, mechanism }, index) => {
    if (!idle[index] && !feeds(machine, mechanism)) add(a, b, index, false);
  });
  machine.plan.loads.forEach(({ a, b }, index) => {
    add(a, b, index, true);
  });
  return parts;
}

/** The number of each part's island. Cells joined by anything that could ever conduct belong together; rails don't join. */
export function islandOfPart(
  machine: Machine,
  { joining, number }: Rails,
  { a, b }: Parts,
): { of: Int32Array; count: number } {
  const { nodes } = machine.plan;
  const together = new Joining(nodes);
  for (let node = 0; node < nodes; node++) if (number[node] === -1) together.join(node, joining.find(node));
  for (let part = 0; part < a.length; part++) {
    if (number[a[part]!] === -1 && number[b[part]!] === -1) together.join(a[part]!, b[part]!);
  }
  const islandAt = new Int32Array(nodes).fill(-1);
  const of = new Int32Array(a.length);
  let count = 0;
  for (let part = 0; part < a.length; part++) {
    const anchor = number[a[part]!] === -1 ? a[part]! : number[b[part]!] === -1 ? b[part]! : -1;
    // A part between two rails is an island of its own.
    if (anchor < 0) {
      of[part] = count++;
      continue;
    }
    const root = together.find(anchor);
    if (islandAt[root] === -1) islandAt[root] = count++;
    of[part] = islandAt[root]!;
  }
  return { of, count };
}

/** The parts in the order of their islands, and where each island begins in it. */
export function ordered(of: Int32Array, islands: number): { start: Int32Array; order: Int32Array } {
  const start = new Int32Array(islands + 1);
  for (let part = 0; part < of.length; part++) start[of[part]! + 1] = start[of[part]! + 1]! + 1;
  for (let island = 0; island < islands; island++) start[island + 1] = start[island + 1]! + start[island]!;
  const next = start.slice();
  const order = new Int32Array(of.length);
  for (let part = 0; part < of.length; part++) {
    const island = of[part]!;
    order[next[island]!] = part;
    next[island] = next[island]! + 1;
  }
  return { start, order };
}

/** Points of the islands, their rails first: where each begins, the ends of all parts, and what is known of rails. */
export interface Points {
  readonly pointStart: Int32Array;
  readonly railEnd: Int32Array;
  readonly a: Int32Array;
  readonly b: Int32Array;
  /** Potentials along each axis; of points that are no rails 0. */
  readonly volts: readonly (readonly number[])[];
  /** Some island lies between rails that share no reference. */
  readonly mixed: boolean;
}

/** Numbers the points of all islands, one after another. */
export function numberPoints(
  machine: Machine,
  rails: Rails,
  parts: Parts,
  { start, order }: { start: Int32Array; order: Int32Array },
): Points {
  const { nodes } = machine.plan;
  const islands = start.length - 1;
  // What is one point: a rail, or the cells that feeding devices join.
  const place = new Int32Array(nodes);
  for (let node = 0; node < nodes; node++)
    place[node] = rails.number[node] === -1 ? rails.joining.find(node) : nodes + rails.number[node]!;
  const pointAt = new Int32Array(nodes + rails.nodes.length).fill(-1);
  const pointStart = new Int32Array(islands + 1);
  const railEnd = new Int32Array(islands);
  const a = new Int32Array(parts.a.length);
  const b = new Int32Array(parts.b.length);
  const volts: number[][] = rails.volts.map(() => []);
  const keys: number[] = [];
  let mixed = false;
  for (let island = 0; island < islands; island++) {
    const from = start[island]!;
    const to = start[island + 1]!;
    pointStart[island] = keys.length;
    let group = -1;
    for (let index = 2 * from; index < 2 * to; index++) {
      const part = order[index >> 1]!;
      const key = place[(index & 1 ? parts.b : parts.a)[part]!]!;
      if (key < nodes || pointAt[key] !== -1) continue;
      const node = rails.nodes[key - nodes]!;
      pointAt[key] = keys.push(key) - 1;
      for (let axis = 0; axis < volts.length; axis++) volts[axis]!.push(rails.volts[axis]![node]!);
      if (group !== -1 && group !== rails.group[node]) mixed = true;
      group = rails.group[node]!;
    }
    railEnd[island] = keys.length;
    for (let index = 2 * from; index < 2 * to; index++) {
      const part = order[index >> 1]!;
      const key = place[(index & 1 ? parts.b : parts.a)[part]!]!;
      if (pointAt[key] === -1) {
        pointAt[key] = keys.push(key) - 1;
        for (const along of volts) along.push(0);
      }
      (index & 1 ? b : a)[part] = pointAt[key]!;
    }
    for (let point = pointStart[island]!; point < keys.length; point++) pointAt[keys[point]!] = -1;
  }
  pointStart[islands] = keys.length;
  return { pointStart, railEnd, a, b, volts, mixed };
}
