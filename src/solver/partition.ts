/**
 * The circuit cut into islands for one state of its feeding devices (fuses, breakers, isolators) and supplies. Nodes
 * that are joined to a supply's pole through closed feeding devices are rails: their potential is known, so what hangs
 * between rails falls into islands that can't influence each other. A moving contact then costs only its own island.
 */

import { Joining } from './joining.ts';
import type { Machine } from './machine.ts';

/** Working memory of one island, so that evaluating allocates nothing. */
export interface Scratch {
  readonly parent: Int32Array;
  /** Potentials of its points; the rails' are set once. */
  readonly re: Float64Array;
  readonly im: Float64Array;
  readonly sum: Float64Array;
  readonly sumRe: Float64Array;
  readonly sumIm: Float64Array;
}

export interface Island {
  /** Local points: rails first, then cells of which the potential is found by evaluating. */
  readonly rails: number;
  readonly points: number;
  /** Switches: global index, mechanism, closed mask, and the two local points. */
  readonly switches: Int32Array;
  readonly mechanism: Int32Array;
  readonly closedMask: Uint8Array;
  readonly switchA: Int32Array;
  readonly switchB: Int32Array;
  /** Loads: global index, local points, siemens. */
  readonly loads: Int32Array;
  readonly loadA: Int32Array;
  readonly loadB: Int32Array;
  readonly siemens: Float64Array;
  /** Touches rails that share no reference, so only the whole network tells. */
  readonly mixed: boolean;
  readonly scratch: Scratch;
}

export interface Partition {
  readonly islands: readonly Island[];
  /** Islands in which a mechanism has contacts; islands that its coils are in. */
  readonly islandsOf: readonly Int32Array[];
  readonly coilIslandsOf: readonly (readonly number[])[];
  /** Two poles joined through feeding devices alone, or two supplies joined: the whole network must be solved. */
  readonly whole: boolean;
  /** Potential of each node that is a rail; NaN elsewhere. */
  readonly railRe: Float64Array;
  readonly railIm: Float64Array;
  readonly railGroup: Int32Array;
  /** Working memory of whoever evaluates: islands to be evaluated again. */
  readonly dirty: Uint8Array;
  readonly queue: Int32Array;
}

const partitionKey = (machine: Machine, at: Uint8Array, supplyOn: Uint8Array): string => {
  let key = '';
  for (const feed of machine.feeds) key += String.fromCharCode(at[feed]!);
  for (const on of supplyOn) key += on;
  return key;
};

/** The partition for this state of the feeding devices, worked out once and kept with the machine. */
export function partitionFor(machine: Machine, at: Uint8Array, supplyOn: Uint8Array): Partition {
  const key = partitionKey(machine, at, supplyOn);
  const known = machine.partitions.get(key);
  if (known) return known;
  const made = makePartition(machine, at, supplyOn);
  // Hand-written scenarios visit a few; a hostile one must not fill the memory.
  if (machine.partitions.size > 64) machine.partitions.clear();
  machine.partitions.set(key, made);
  return made;
}

/** Rails: nodes joined to a pole through closed feeding devices, each with its potential and reference group. */
function findRails(machine: Machine, at: Uint8Array, supplyOn: Uint8Array) {
  const { plan, closedMask } = machine;
  const joining = new Joining(plan.nodes);
  for (const [a, b] of plan.joins) joining.join(a, b);
  plan.switches.forEach(({ a, b, mechanism }, index) => {
    const feeding = mechanism < 0 || plan.mechanisms[mechanism]!.drive === 'feed';
    const position = mechanism < 0 ? 0 : at[mechanism]!;
    if (feeding && (position & ~closedMask[index]!) === 0 && closedMask[index] !== 0) joining.join(a, b);
  });
  const re = new Float64Array(plan.nodes).fill(Number.NaN);
  const im = new Float64Array(plan.nodes).fill(Number.NaN);
  const group = new Int32Array(plan.nodes).fill(-1);
  let whole = false;
  plan.supplies.forEach((supply, index) => {
    if (!supplyOn[index]) return;
    // All earthed supplies share one reference.
    const reference = supply.earthed
      ? plan.supplies.findIndex(({ earthed }, at) => earthed && supplyOn[at])
      : index;
    for (const pole of supply.poles) {
      const root = joining.find(pole.node);
      if (group[root] !== -1 && (group[root] !== reference || re[root] !== pole.re || im[root] !== pole.im))
        whole = true;
      re[root] = pole.re;
      im[root] = pole.im;
      group[root] = reference;
    }
  });
  for (let node = 0; node < plan.nodes; node++) {
    const root = joining.find(node);
    re[node] = re[root]!;
    im[node] = im[root]!;
    group[node] = group[root]!;
  }
  return { joining, re, im, group, whole };
}

function scratchFor(
  points: number,
  railNodes: readonly number[],
  re: Float64Array,
  im: Float64Array,
): Scratch {
  const scratch: Scratch = {
    parent: new Int32Array(points),
    re: new Float64Array(points),
    im: new Float64Array(points),
    sum: new Float64Array(points),
    sumRe: new Float64Array(points),
    sumIm: new Float64Array(points),
  };
  railNodes.forEach((node, point) => {
    scratch.re[point] = re[node]!;
    scratch.im[point] = im[node]!;
  });
  return scratch;
}

function makePartition(machine: Machine, at: Uint8Array, supplyOn: Uint8Array): Partition {
  const { plan } = machine;
  const { joining, re, im, group, whole } = findRails(machine, at, supplyOn);
  const isRail = (node: number): boolean => group[node] !== -1;
  const feeding = (mechanism: number): boolean =>
    mechanism < 0 || plan.mechanisms[mechanism]!.drive === 'feed';

  // Cells joined by anything that could ever conduct belong to one island; rails don't join.
  const islandsJoin = new Joining(plan.nodes);
  for (let node = 0; node < plan.nodes; node++) if (!isRail(node)) islandsJoin.join(node, joining.find(node));
  const parts = [
    ...plan.switches.flatMap((part, index) =>
      feeding(part.mechanism) ? [] : [{ ...part, index, load: false }],
    ),
    ...plan.loads.map((part, index) => ({ ...part, index, load: true })),
  ];
  for (const { a, b } of parts) if (!isRail(a) && !isRail(b)) islandsJoin.join(a, b);

  // A part between two rails is an island of its own; its key must not clash with a node.
  const islandParts = new Map<number, typeof parts>();
  parts.forEach((part, number) => {
    const anchor = isRail(part.a) ? (isRail(part.b) ? -1 : part.b) : part.a;
    const key = anchor < 0 ? plan.nodes + number : islandsJoin.find(anchor);
    const list = islandParts.get(key);
    if (list) list.push(part);
    else islandParts.set(key, [part]);
  });

  const islands: Island[] = [];
  const islandsOf: number[][] = plan.mechanisms.map(() => []);
  const coilIslandsOf: number[][] = plan.mechanisms.map(() => []);
  for (const members of islandParts.values()) {
    const number = islands.length;
    const local = new Map<number | string, number>();
    const railNodes: number[] = [];
    // Rails of one potential and reference are one point: they are joined without resistance.
    const railKey = (node: number): string => `${group[node]} ${re[node]} ${im[node]}`;
    for (const { a, b } of members) {
      for (const node of [a, b]) {
        if (isRail(node) && !local.has(railKey(node))) {
          local.set(railKey(node), local.size);
          railNodes.push(node);
        }
      }
    }
    const rails = local.size;
    const point = (node: number): number => {
      const key = isRail(node) ? railKey(node) : joining.find(node);
      const known = local.get(key);
      if (known !== undefined) return known;
      local.set(key, local.size);
      return local.size - 1;
    };
    const ends = members.map(({ a, b }) => [point(a), point(b)] as const);
    const switches = members.flatMap((part, at) => (part.load ? [] : [{ part, ends: ends[at]! }]));
    const loads = members.flatMap((part, at) => (part.load ? [{ part, ends: ends[at]! }] : []));
    for (const { part } of switches) {
      const list = islandsOf[part.mechanism]!;
      if (list.at(-1) !== number) list.push(number);
    }
    for (const { part } of loads) {
      if (part.mechanism >= 0 && coilIslandsOf[part.mechanism]!.at(-1) !== number)
        coilIslandsOf[part.mechanism]!.push(number);
    }
    islands.push({
      rails,
      points: local.size,
      switches: Int32Array.from(switches, ({ part }) => part.index),
      mechanism: Int32Array.from(switches, ({ part }) => part.mechanism),
      closedMask: Uint8Array.from(switches, ({ part }) => machine.closedMask[part.index]!),
      switchA: Int32Array.from(switches, (entry) => entry.ends[0]),
      switchB: Int32Array.from(switches, (entry) => entry.ends[1]),
      loads: Int32Array.from(loads, ({ part }) => part.index),
      loadA: Int32Array.from(loads, (entry) => entry.ends[0]),
      loadB: Int32Array.from(loads, (entry) => entry.ends[1]),
      siemens: Float64Array.from(loads, ({ part }) => plan.loads[part.index]!.siemens),
      mixed: new Set(railNodes.map((node) => group[node])).size > 1,
      scratch: scratchFor(local.size, railNodes, re, im),
    });
  }
  return {
    islands,
    islandsOf: islandsOf.map((list) => Int32Array.from(list)),
    coilIslandsOf,
    whole: whole || islands.some(({ mixed }) => mixed),
    railRe: re,
    railIm: im,
    railGroup: group,
    dirty: new Uint8Array(islands.length),
    queue: new Int32Array(islands.length),
  };
}
