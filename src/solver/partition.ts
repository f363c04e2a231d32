/**
 * The circuit cut into islands for one state of its feeding devices (fuses, breakers, isolators) and supplies. Nodes
 * that are joined to a supply's pole through closed feeding devices are rails: their potential is known, so what hangs
 * between rails falls into islands that can't influence each other. A moving contact then costs only its own island.
 */
import { type Rows, turned } from '../graph/index.ts';
import { newVolts } from './axes.ts';
import { islandOfPart, numberPoints, ordered, partsOf } from './island-points.ts';
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
  const steps = new Int32Array(count);
  const coilStart = new Int32Array(count + 1);
  const coils: number[] = [];
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
      const { siemens: g, mechanism: moves } = plan.loads[global]!;
      // Between fewer than two rails nothing ever has a voltage, so nothing bears on the coils there.
      if (
        moves >= 0 &&
        railEnd - points.pointStart[island]! > 1 &&
        !coils.includes(moves, coilStart[island]!)
      )
        coils.push(moves);
      const rail = a < railEnd === b < railEnd || g === 0 ? -1 : Math.min(a, b);
      hung = hung === -2 || hung === rail ? rail : -1;
      loads[nextLoad] = global;
      loadA[nextLoad] = a;
      loadB[nextLoad] = b;
      siemens[nextLoad++] = g;
    }
    coilStart[island + 1] = coils.length;
    common[island] = Math.max(-1, hung);
    steps[island] =
      points.pointStart[island + 1]! -
      points.pointStart[island]! +
      (nextSwitch - switchStart[island]!) +
      2 * (nextLoad - loadStart[island]!);
  }
  switchStart[count] = nextSwitch;
  loadStart[count] = nextLoad;
  const coilsIn = { start: coilStart, list: Int32Array.from(coils) };
  const size = points.volts[0]!.length;
  return {
    islands: count,
    pointStart: points.pointStart,
    railEnd: points.railEnd,
    common,
    steps,
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
    coilsIn,
    coilIslands: turned(coilsIn, machine.mechanisms),
    contactIslands: turned(moversOnce(machine.mechanisms, switchStart, mechanism), machine.mechanisms),
    whole: rails.whole || points.mixed,
    parent: Int32Array.from({ length: size }, (_, point) => point),
    volts: points.volts.map((along) => Float64Array.from(along)),
    sum: new Float64Array(size),
    currents: newVolts(machine.axes, size),
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
