/**
 * The circuit cut into islands for one state of its feeding devices (fuses, breakers, isolators) and supplies. Nodes
 * that are joined to a supply's pole through closed feeding devices are rails: their potential is known, so what hangs
 * between rails falls into islands that can't influence each other. A moving contact then costs only its own island.
 */

import { Joining } from './joining.ts';
import { DRIVE, type Machine } from './machine.ts';

/**
 * All islands side by side in flat arrays, so that evaluating one after another walks through memory in order. Island `i`
 * has the switches from `switchStart[i]` up to `switchStart[i + 1]`, and so on. Its points are its rails first, then the
 * cells of which the potential is found by evaluating.
 */
export interface Partition {
  readonly islands: number;
  readonly pointStart: Int32Array;
  /** The end of an island's rails among its points. */
  readonly railEnd: Int32Array;
  /** The rail on which one end of every load hangs, the other being no rail; -1 where that isn't so. */
  readonly common: Int32Array;
  readonly switchStart: Int32Array;
  /** Switches: global index, mechanism, closed mask, and the two points. */
  readonly switches: Int32Array;
  readonly mechanism: Int32Array;
  readonly closedMask: Uint8Array;
  readonly switchA: Int32Array;
  readonly switchB: Int32Array;
  readonly loadStart: Int32Array;
  /** Loads: global index, points, siemens. */
  readonly loads: Int32Array;
  readonly loadA: Int32Array;
  readonly loadB: Int32Array;
  readonly siemens: Float64Array;
  /** Islands in which mechanism `m` has contacts: those of `islandList` from `listStart[m]` up to `listStart[m + 1]`. */
  readonly listStart: Int32Array;
  readonly islandList: Int32Array;
  /**
   * Two poles joined through feeding devices alone, two supplies joined, or an island between rails that share no
   * reference: the whole network must be solved.
   */
  readonly whole: boolean;
  /** Working memory of whoever evaluates: potentials of points (the rails' are set once), and what finds them. */
  readonly parent: Int32Array;
  readonly re: Float64Array;
  readonly im: Float64Array;
  readonly sum: Float64Array;
  readonly sumRe: Float64Array;
  readonly sumIm: Float64Array;
  /** Islands to be evaluated again. */
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

/** The number of each part's island. Cells joined by anything that could ever conduct belong together; rails don't join. */
function islandOfPart(
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
function ordered(of: Int32Array, islands: number): { start: Int32Array; order: Int32Array } {
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
interface Points {
  readonly pointStart: Int32Array;
  readonly railEnd: Int32Array;
  readonly a: Int32Array;
  readonly b: Int32Array;
  readonly re: number[];
  readonly im: number[];
  /** Some island lies between rails that share no reference. */
  readonly mixed: boolean;
}

function numberPoints(
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
  const re: number[] = [];
  const im: number[] = [];
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
      re.push(rails.re[node]!);
      im.push(rails.im[node]!);
      if (group !== -1 && group !== rails.group[node]) mixed = true;
      group = rails.group[node]!;
    }
    railEnd[island] = keys.length;
    for (let index = 2 * from; index < 2 * to; index++) {
      const part = order[index >> 1]!;
      const key = place[(index & 1 ? parts.b : parts.a)[part]!]!;
      if (pointAt[key] === -1) {
        pointAt[key] = keys.push(key) - 1;
        re.push(0);
        im.push(0);
      }
      (index & 1 ? b : a)[part] = pointAt[key]!;
    }
    for (let point = pointStart[island]!; point < keys.length; point++) pointAt[keys[point]!] = -1;
  }
  pointStart[islands] = keys.length;
  return { pointStart, railEnd, a, b, re, im, mixed };
}

/** Where the switches and the loads of each island go, and the islands of each mechanism. */
function makePartition(machine: Machine, at: Uint8Array, supplyOn: Uint8Array): Partition {
  const { plan } = machine;
  const rails = findRails(machine, at, supplyOn);
  const parts = partsOf(machine);
  const { of, count } = islandOfPart(machine, rails, parts);
  const placed = ordered(of, count);
  const points = numberPoints(machine, rails, parts, placed);
  const { order, start } = placed;
  const loadCount = plan.loads.length;
  const switchCount = order.length - loadCount;
  const switchStart = new Int32Array(count + 1);
  const loadStart = new Int32Array(count + 1);
  const switches = new Int32Array(switchCount);
  const mechanism = new Int32Array(switchCount);
  const closedMask = new Uint8Array(switchCount);
  const switchA = new Int32Array(switchCount);
  const switchB = new Int32Array(switchCount);
  const loads = new Int32Array(loadCount);
  const loadA = new Int32Array(loadCount);
  const loadB = new Int32Array(loadCount);
  const siemens = new Float64Array(loadCount);
  const common = new Int32Array(count);
  let nextSwitch = 0;
  let nextLoad = 0;
  for (let island = 0; island < count; island++) {
    switchStart[island] = nextSwitch;
    loadStart[island] = nextLoad;
    const railEnd = points.railEnd[island]!;
    let hung = -2;
    for (let index = start[island]!; index < start[island + 1]!; index++) {
      const part = order[index]!;
      const global = parts.index[part]!;
      const a = points.a[part]!;
      const b = points.b[part]!;
      if (!parts.load[part]) {
        switches[nextSwitch] = global;
        mechanism[nextSwitch] = machine.switchMechanism[global]!;
        closedMask[nextSwitch] = machine.closedMask[global]!;
        switchA[nextSwitch] = a;
        switchB[nextSwitch++] = b;
        continue;
      }
      const g = plan.loads[global]!.siemens;
      const rail = a < railEnd === b < railEnd || g === 0 ? -1 : Math.min(a, b);
      hung = hung === -2 || hung === rail ? rail : -1;
      loads[nextLoad] = global;
      loadA[nextLoad] = a;
      loadB[nextLoad] = b;
      siemens[nextLoad++] = g;
    }
    common[island] = Math.max(-1, hung);
  }
  switchStart[count] = nextSwitch;
  loadStart[count] = nextLoad;
  const size = points.re.length;
  return {
    islands: count,
    pointStart: points.pointStart,
    railEnd: points.railEnd,
    common,
    switchStart,
    switches,
    mechanism,
    closedMask,
    switchA,
    switchB,
    loadStart,
    loads,
    loadA,
    loadB,
    siemens,
    ...islandsOfMechanisms(machine.mechanisms, count, switchStart, mechanism),
    whole: rails.whole || points.mixed,
    parent: new Int32Array(size),
    re: Float64Array.from(points.re),
    im: Float64Array.from(points.im),
    sum: new Float64Array(size),
    sumRe: new Float64Array(size),
    sumIm: new Float64Array(size),
    dirty: new Uint8Array(count),
    queue: new Int32Array(count),
  };
}

/** For each mechanism the islands in which it has contacts, each once. */
function islandsOfMechanisms(
  mechanisms: number,
  islands: number,
  switchStart: Int32Array,
  mechanism: Int32Array,
): Pick<Partition, 'listStart' | 'islandList'> {
  const last = new Int32Array(mechanisms).fill(-1);
  const listStart = new Int32Array(mechanisms + 1);
  const each = (visit: (mover: number, island: number) => void): void => {
    last.fill(-1);
    for (let island = 0; island < islands; island++) {
      for (let index = switchStart[island]!; index < switchStart[island + 1]!; index++) {
        const mover = mechanism[index]!;
        if (last[mover] === island) continue;
        last[mover] = island;
        visit(mover, island);
      }
    }
  };
  each((mover) => {
    listStart[mover + 1] = listStart[mover + 1]! + 1;
  });
  for (let mover = 0; mover < mechanisms; mover++)
    listStart[mover + 1] = listStart[mover + 1]! + listStart[mover]!;
  const next = listStart.slice();
  const islandList = new Int32Array(listStart[mechanisms]!);
  each((mover, island) => {
    islandList[next[mover]!] = island;
    next[mover] = next[mover]! + 1;
  });
  return { listStart, islandList };
}
