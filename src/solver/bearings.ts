/**
 * What bears on what, as the islands of a partition show it: a mechanism on the islands in which it has contacts, and an
 * island on the mechanisms whose coils are in it. Kept in these two steps, since in one island there may be hundreds of each.
 */

import { Joining, type Rows, rowOf, strongComponents } from '../graph/index.ts';
import { distance } from './axes.ts';
import type { Partition } from './islands.ts';
import { DRIVE, type Machine } from './machine.ts';

export interface Bearings {
  readonly partition: Partition;
  /** By island: contacts of it could join two rails. */
  readonly shortable: readonly boolean[];
  /** By island: it is a contact between two places of one rail, which decides what a short circuit puts out. */
  readonly bridging: readonly boolean[];
  /** By mechanism: 1 where its coil may land between its limits. */
  readonly lingering: Uint8Array;
}

/**
 * Whether contacts of the island could join two rails: then a wrong order may trip a protective device.
 *
 * @param joining - of the points of all islands, in which nothing of this one is joined yet
 */
function canShort(partition: Partition, island: number, joining: Joining): boolean {
  const { switchA, switchB, closedMask, switchStart, pointStart, railEnd } = partition;
  const rails = railEnd[island]!;
  if (rails - pointStart[island]! < 2) return false;
  for (let index = switchStart[island]!; index < switchStart[island + 1]!; index++) {
    if (closedMask[index] === 0) continue;
    const a = joining.find(switchA[index]!);
    const b = joining.find(switchB[index]!);
    // The smaller one leads, so a rail always does.
    if (a !== b && a < rails && b < rails) return true;
    joining.join(a, b);
  }
  return false;
}

/**
 * Whether a coil of the island could land between its limits, where it stays as it is and so remembers. Left out where
 * that can't be: a lone load has the difference of two rails or nothing, and loads that all hang on one rail have
 * nothing in series with them.
 */
function mayLandBetween(machine: Machine, partition: Partition, island: number): boolean {
  const { loads, loadA, loadB, siemens, loadStart, volts: potentials } = partition;
  const first = partition.pointStart[island]!;
  const railEnd = partition.railEnd[island]!;
  const from = loadStart[island]!;
  const end = loadStart[island + 1]!;
  let conducting = 0;
  for (let load = from; load < end; load++) if (siemens[load]! > 0) conducting++;
  const hung = partition.common[island]! >= 0;
  for (let load = from; load < end; load++) {
    const index = loads[load]!;
    const atRails = loadA[load]! < railEnd && loadB[load]! < railEnd;
    if (machine.loadMechanism[index]! < 0 || atRails) continue;
    if (!hung && conducting > 1) return true;
    for (let one = first; one < railEnd; one++) {
      for (let other = first; other < one; other++) {
        const volts = distance(potentials, one, other);
        if (volts > machine.releaseVolts[index]! && volts < machine.operateVolts[index]!) return true;
      }
    }
  }
  return false;
}

export function bearingsOf(machine: Machine, partition: Partition): Bearings {
  const { coilsIn } = partition;
  const shortable: boolean[] = [];
  const bridging: boolean[] = [];
  const lingering = new Uint8Array(machine.mechanisms);
  const joining = new Joining(partition.parent.length);
  for (let island = 0; island < partition.islands; island++) {
    shortable.push(canShort(partition, island, joining));
    bridging.push(
      partition.railEnd[island] === partition.pointStart[island + 1] &&
        partition.switchStart[island]! < partition.switchStart[island + 1]!,
    );
    const [from, end] = [coilsIn.start[island]!, coilsIn.start[island + 1]!];
    if (from === end || !mayLandBetween(machine, partition, island)) continue;
    for (let coil = from; coil < end; coil++) lingering[coilsIn.list[coil]!] = 1;
  }
  return { partition, shortable, bridging, lingering };
}

/** The mechanisms that have contacts in an island; one may come several times. */
export const moversIn = ({ mechanism, switchStart }: Partition, island: number): Int32Array =>
  mechanism.subarray(switchStart[island]!, switchStart[island + 1]!);

/** The mechanisms on whose coils one bears; one may come several times. */
export function* bornBy(bearings: Bearings, mechanism: number): Generator<number> {
  const { contactIslands, coilsIn } = bearings.partition;
  for (const island of rowOf(contactIslands, mechanism)) yield* rowOf(coilsIn, island);
}

/** Whether a mechanism's position follows from more than its coil's voltage now. */
export const keepsState = ({ drive }: Machine, { lingering }: Bearings, mechanism: number): boolean =>
  (drive[mechanism]! > DRIVE.coil && drive[mechanism]! < DRIVE.act) || lingering[mechanism] === 1;

export interface Feedback {
  readonly partOf: Int32Array;
  readonly returns: (mechanism: number) => boolean;
}

const known = new WeakMap<Rows, Feedback>();

/** The feedback of a partition, worked out once: one in which the contacts close otherwise has the same rows. */
export function feedback(partition: Partition, mechanisms: number): Feedback {
  const before = known.get(partition.contactIslands);
  if (before) return before;
  const made = findFeedback(partition, mechanisms);
  known.set(partition.contactIslands, made);
  return made;
}

/**
 * The strongly connected parts: of each mechanism the number of its part, smaller than those of parts that bear on it, and
 * whether a way leads from it back to itself. Islands are vertices of their own, so that hundreds of contacts and coils in one
 * island are not as many pairs.
 */
function findFeedback({ contactIslands, coilsIn, islands }: Partition, mechanisms: number): Feedback {
  const start = new Int32Array(mechanisms + islands + 1);
  start.set(contactIslands.start);
  const leads = contactIslands.list.length;
  for (let island = 0; island <= islands; island++)
    start[mechanisms + island] = leads + coilsIn.start[island]!;
  const list = new Int32Array(leads + coilsIn.list.length);
  for (let index = 0; index < leads; index++) list[index] = mechanisms + contactIslands.list[index]!;
  list.set(coilsIn.list, leads);
  const component = strongComponents({ start, list });
  const sizes = new Int32Array(start.length);
  for (const number of component) sizes[number]!++;
  return {
    partOf: component.subarray(0, mechanisms),
    // A way back to itself goes through an island at least.
    returns: (mechanism) => sizes[component[mechanism]!]! > 1,
  };
}
