/**
 * The circuit cut into islands for one state of its feeding devices (fuses, breakers, isolators) and supplies. Nodes
 * that are joined to a supply's pole through closed feeding devices are rails: their potential is known, so what hangs
 * between rails falls into islands that can't influence each other. A moving contact then costs only its own island.
 */
import { type Rows, turned } from '../graph/index.ts';
import { newVolts } from './axes.ts';
import { islandOfPart, numberPoints, ordered, type Parts, type Points, partsOf } from './island-points.ts';
import type { Partition } from './islands.ts';
import type { Machine } from './machine.ts';
import { findRails } from './rails.ts';

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

/** The parts, island by island, and their points. */
interface Laid {
  readonly parts: Parts;
  readonly points: Points;
  readonly placed: { readonly start: Int32Array; readonly order: Int32Array };
}

/** The switches of each island side by side. */
function switchesOf(machine: Machine, { parts, points, placed }: Laid) {
  const { start, order } = placed;
  const size = order.length - machine.plan.loads.length;
  const switchStart = new Int32Array(start.length);
  const switches = new Int32Array(size);
  const mechanism = new Int32Array(size);
  const closedMask = new Uint8Array(size);
  const switchA = new Int32Array(size);
  const switchB = new Int32Array(size);
  let next = 0;
  for (let island = 0; island + 1 < start.length; island++) {
    for (let index = start[island]!; index < start[island + 1]!; index++) {
      const part = order[index]!;
      if (parts.load[part]) continue;
      const global = parts.index[part]!;
      switches[next] = global;
      mechanism[next] = machine.switchMechanism[global]!;
      closedMask[next] = machine.closedMask[global]!;
      switchA[next] = points.a[part]!;
      switchB[next++] = points.b[part]!;
    }
    switchStart[island + 1] = next;
  }
  return { switchStart, switches, mechanism, closedMask, switchA, switchB };
}

/** The loads of each island side by side, the rail on which they hang, and the mechanisms that their coils move. */
function loadsOf({ plan }: Machine, { parts, points, placed }: Laid) {
  const { start, order } = placed;
  const size = plan.loads.length;
  const loadStart = new Int32Array(start.length);
  const loads = new Int32Array(size);
  const loadA = new Int32Array(size);
  const loadB = new Int32Array(size);
  const siemens = new Float64Array(size);
  const common = new Int32Array(start.length - 1);
  const coilStart = new Int32Array(start.length);
  const coils: number[] = [];
  let next = 0;
  for (let island = 0; island + 1 < start.length; island++) {
    const railEnd = points.railEnd[island]!;
    const rails = railEnd - points.pointStart[island]!;
    let hung = -2;
    for (let index = start[island]!; index < start[island + 1]!; index++) {
      const part = order[index]!;
      if (!parts.load[part]) continue;
      const global = parts.index[part]!;
      const a = points.a[part]!;
      const b = points.b[part]!;
      const { siemens: g, mechanism } = plan.loads[global]!;
      // Between fewer than two rails nothing ever has a voltage, so nothing bears on the coils there.
      if (mechanism >= 0 && rails > 1 && !coils.includes(mechanism, coilStart[island]!))
        coils.push(mechanism);
      const rail = a < railEnd === b < railEnd || g === 0 ? -1 : Math.min(a, b);
      hung = hung === -2 || hung === rail ? rail : -1;
      loads[next] = global;
      loadA[next] = a;
      loadB[next] = b;
      siemens[next++] = g;
    }
    loadStart[island + 1] = next;
    coilStart[island + 1] = coils.length;
    common[island] = Math.max(-1, hung);
  }
  const coilsIn: Rows = { start: coilStart, list: Int32Array.from(coils) };
  return { loadStart, loads, loadA, loadB, siemens, common, coilsIn };
}

const lengthOf = (start: Int32Array, island: number): number => start[island + 1]! - start[island]!;

/** What evaluating each island costs. */
function stepsOf(islands: number, points: Int32Array, switches: Int32Array, loads: Int32Array): Int32Array {
  const steps = new Int32Array(islands);
  for (let island = 0; island < islands; island++)
    steps[island] = lengthOf(points, island) + lengthOf(switches, island) + 2 * lengthOf(loads, island);
  return steps;
}

function eachItsOwn(size: number): Int32Array {
  const parent = new Int32Array(size);
  for (let point = 0; point < size; point++) parent[point] = point;
  return parent;
}

function makePartition(machine: Machine, at: Uint8Array, supplyOn: Uint8Array): Partition {
  const { mechanisms, axes } = machine;
  const rails = findRails(machine, at, supplyOn);
  const parts = partsOf(machine);
  const { of, count } = islandOfPart(machine, rails, parts);
  const placed = ordered(of, count);
  const points = numberPoints(machine, rails, parts, placed);
  const switches = switchesOf(machine, { parts, points, placed });
  const loads = loadsOf(machine, { parts, points, placed });
  const size = points.volts[0]!.length;
  return {
    islands: count,
    pointStart: points.pointStart,
    railEnd: points.railEnd,
    ...switches,
    ...loads,
    steps: stepsOf(count, points.pointStart, switches.switchStart, loads.loadStart),
    coilIslands: turned(loads.coilsIn, mechanisms),
    contactIslands: turned(moversOnce(mechanisms, switches.switchStart, switches.mechanism), mechanisms),
    whole: rails.whole || points.mixed,
    parent: eachItsOwn(size),
    volts: points.volts.map((along) => Float64Array.from(along)),
    sum: new Float64Array(size),
    currents: newVolts(axes, size),
    dirty: new Uint8Array(count),
    queue: new Int32Array(count),
  };
}

/** For each island the mechanisms that have contacts in it, each once; feeding devices and open places have none there. */
function moversOnce(mechanisms: number, switchStart: Int32Array, mechanism: Int32Array): Rows {
  const last = new Int32Array(mechanisms).fill(-1);
  const start = new Int32Array(switchStart.length);
  const list: number[] = [];
  for (let island = 0; island + 1 < switchStart.length; island++) {
    for (let index = switchStart[island]!; index < switchStart[island + 1]!; index++) {
      const mover = mechanism[index]!;
      if (last[mover] === island) continue;
      last[mover] = island;
      list.push(mover);
    }
    start[island + 1] = list.length;
  }
  return { start, list: Int32Array.from(list) };
}
