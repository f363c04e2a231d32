/**
 * The circuit cut into islands for one state of its feeding devices (fuses, breakers, isolators) and supplies. Nodes
 * that are joined to a supply's pole through closed feeding devices are rails: their potential is known, so what hangs
 * between rails falls into islands that can't influence each other. A moving contact then costs only its own island.
 */

import { Joining } from './joining.ts';
import { DRIVE, type Machine } from './machine.ts';

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
  /** The rail on which one end of every load hangs, the other being no rail; -1 where that isn't so. */
  readonly common: number;
  /** Touches rails that share no reference, so only the whole network tells. */
  readonly mixed: boolean;
  readonly scratch: Scratch;
}

export interface Partition {
  readonly islands: readonly Island[];
  /** Islands in which a mechanism has contacts. */
  readonly islandsOf: readonly Int32Array[];
  /** Two poles joined through feeding devices alone, or two supplies joined: the whole network must be solved. */
  readonly whole: boolean;
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

/** Nodes joined to a pole through closed feeding devices. */
interface Rails {
  readonly joining: Joining;
  readonly re: Float64Array;
  readonly im: Float64Array;
  readonly group: Int32Array;
  /** Number of the rail each node is part of, -1 elsewhere. Rails of one potential and reference are one. */
  readonly number: Int32Array;
  /** A node of each rail. */
  readonly nodes: readonly number[];
  readonly whole: boolean;
}

const feeds = (machine: Machine, mechanism: number): boolean =>
  mechanism < 0 || machine.drive[mechanism] === DRIVE.feed;

function findRails(machine: Machine, at: Uint8Array, supplyOn: Uint8Array): Rails {
  const { plan, closedMask } = machine;
  const joining = new Joining(plan.nodes);
  for (const [a, b] of plan.joins) joining.join(a, b);
  for (let index = 0; index < plan.switches.length; index++) {
    const { a, b, mechanism } = plan.switches[index]!;
    if (closedMask[index] === 0 || !feeds(machine, mechanism)) continue;
    const position = mechanism < 0 ? 0 : at[mechanism]!;
    if ((position & ~closedMask[index]!) === 0) joining.join(a, b);
  }
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
  const number = new Int32Array(plan.nodes).fill(-1);
  const nodes: number[] = [];
  for (let node = 0; node < plan.nodes; node++) {
    const root = joining.find(node);
    re[node] = re[root]!;
    im[node] = im[root]!;
    group[node] = group[root]!;
    if (group[node] === -1) continue;
    let rail = nodes.findIndex(
      (other) => group[other] === group[node] && re[other] === re[node] && im[other] === im[node],
    );
    if (rail < 0) rail = nodes.push(node) - 1;
    number[node] = rail;
  }
  return { joining, re, im, group, number, nodes, whole };
}

/** Switches and loads that lie in islands, as columns: global index, ends, and which of the two they are. */
interface Parts {
  readonly a: number[];
  readonly b: number[];
  readonly index: number[];
  readonly load: boolean[];
}

function partsOf(machine: Machine): Parts {
  const parts: Parts = { a: [], b: [], index: [], load: [] };
  const add = (a: number, b: number, index: number, load: boolean): void => {
    parts.a.push(a);
    parts.b.push(b);
    parts.index.push(index);
    parts.load.push(load);
  };
  machine.plan.switches.forEach(({ a, b, mechanism }, index) => {
    if (!feeds(machine, mechanism)) add(a, b, index, false);
  });
  machine.plan.loads.forEach(({ a, b }, index) => {
    add(a, b, index, true);
  });
  return parts;
}

/** The parts of each island. Cells joined by anything that could ever conduct belong together; rails don't join. */
function islandsOfParts(machine: Machine, { joining, number }: Rails, { a, b }: Parts): number[][] {
  const { nodes } = machine.plan;
  const together = new Joining(nodes);
  for (let node = 0; node < nodes; node++) if (number[node] === -1) together.join(node, joining.find(node));
  for (let part = 0; part < a.length; part++) {
    if (number[a[part]!] === -1 && number[b[part]!] === -1) together.join(a[part]!, b[part]!);
  }
  const islandAt = new Int32Array(nodes).fill(-1);
  const islands: number[][] = [];
  for (let part = 0; part < a.length; part++) {
    const anchor = number[a[part]!] === -1 ? a[part]! : number[b[part]!] === -1 ? b[part]! : -1;
    // A part between two rails is an island of its own.
    if (anchor < 0) {
      islands.push([part]);
      continue;
    }
    const root = together.find(anchor);
    if (islandAt[root] === -1) islandAt[root] = islands.push([part]) - 1;
    else islands[islandAt[root]!]!.push(part);
  }
  return islands;
}

function scratchFor(points: number, railNodes: readonly number[], { re, im }: Rails): Scratch {
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

/** Numbers the points of one island: its rails first. `local` is working memory, all -1 before and after. */
function makeIsland(
  machine: Machine,
  rails: Rails,
  parts: Parts,
  members: readonly number[],
  local: Int32Array,
): Island {
  const { plan, closedMask } = machine;
  const { number, joining, nodes, group } = rails;
  const keyOf = (node: number): number =>
    number[node] === -1 ? joining.find(node) : plan.nodes + number[node]!;
  const keys: number[] = [];
  const place = (key: number): void => {
    if (local[key] === -1) local[key] = keys.push(key) - 1;
  };
  for (const part of members) {
    if (number[parts.a[part]!] !== -1) place(keyOf(parts.a[part]!));
    if (number[parts.b[part]!] !== -1) place(keyOf(parts.b[part]!));
  }
  const railNodes = keys.map((key) => nodes[key - plan.nodes]!);
  for (const part of members) {
    place(keyOf(parts.a[part]!));
    place(keyOf(parts.b[part]!));
  }
  const switches = members.filter((part) => !parts.load[part]);
  const loads = members.filter((part) => parts.load[part]);
  const end = (side: readonly number[], part: number): number => local[keyOf(side[part]!)]!;
  const rail = (part: number): number => {
    const a = end(parts.a, part);
    const b = end(parts.b, part);
    return a < railNodes.length === b < railNodes.length ? -1 : Math.min(a, b);
  };
  const siemens = Float64Array.from(loads, (part) => plan.loads[parts.index[part]!]!.siemens);
  const hung = loads.length > 0 ? rail(loads[0]!) : -1;
  const island: Island = {
    rails: railNodes.length,
    points: keys.length,
    switches: Int32Array.from(switches, (part) => parts.index[part]!),
    mechanism: Int32Array.from(switches, (part) => plan.switches[parts.index[part]!]!.mechanism),
    closedMask: Uint8Array.from(switches, (part) => closedMask[parts.index[part]!]!),
    switchA: Int32Array.from(switches, (part) => end(parts.a, part)),
    switchB: Int32Array.from(switches, (part) => end(parts.b, part)),
    loads: Int32Array.from(loads, (part) => parts.index[part]!),
    loadA: Int32Array.from(loads, (part) => end(parts.a, part)),
    loadB: Int32Array.from(loads, (part) => end(parts.b, part)),
    siemens,
    common: siemens.every((g) => g > 0) && loads.every((part) => rail(part) === hung) ? hung : -1,
    mixed: railNodes.some((node) => group[node] !== group[railNodes[0]!]),
    scratch: scratchFor(keys.length, railNodes, rails),
  };
  for (const key of keys) local[key] = -1;
  return island;
}

function makePartition(machine: Machine, at: Uint8Array, supplyOn: Uint8Array): Partition {
  const rails = findRails(machine, at, supplyOn);
  const parts = partsOf(machine);
  const local = new Int32Array(machine.plan.nodes + rails.nodes.length).fill(-1);
  const islands = islandsOfParts(machine, rails, parts).map((members) =>
    makeIsland(machine, rails, parts, members, local),
  );
  const islandsOf: number[][] = Array.from({ length: machine.mechanisms }, () => []);
  islands.forEach(({ mechanism }, number) => {
    for (const mover of mechanism) if (islandsOf[mover]!.at(-1) !== number) islandsOf[mover]!.push(number);
  });
  return {
    islands,
    islandsOf: islandsOf.map((list) => Int32Array.from(list)),
    whole: rails.whole || islands.some(({ mixed }) => mixed),
    dirty: new Uint8Array(islands.length),
    queue: new Int32Array(islands.length),
  };
}
