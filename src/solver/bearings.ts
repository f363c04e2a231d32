/**
 * What bears on what, as the islands of a partition show it: a mechanism on the islands in which it has contacts, and an
 * island on the mechanisms whose coils are in it. Kept in these two steps, since in one island there may be hundreds of each.
 */

import { Joining } from '../graph/index.ts';
import { distance } from './axes.ts';
import type { Partition } from './islands.ts';
import { DRIVE, type Machine } from './machine.ts';
import { strongComponents } from './strong-components.ts';

export interface Bearings {
  readonly partition: Partition;
  /** By island: the mechanisms that have a coil in it which may have a voltage. */
  readonly coilsIn: readonly (readonly number[])[];
  /** By mechanism: the islands its coils are in, where they may have a voltage. */
  readonly coilIslands: readonly (readonly number[])[];
  /** By island: contacts of it could join two rails. */
  readonly shortable: readonly boolean[];
  /** By island: it is a contact between two places of one rail, which decides what a short circuit puts out. */
  readonly bridging: readonly boolean[];
  /** By mechanism: 1 where its coil may land between its limits. */
  readonly lingering: Uint8Array;
}

/** Whether contacts of the island could join two rails: then a wrong order may trip a protective device. */
function canShort(partition: Partition, island: number): boolean {
  const { switchA, switchB, closedMask, switchStart, pointStart } = partition;
  const first = pointStart[island]!;
  const rails = partition.railEnd[island]! - first;
  if (rails < 2) return false;
  const joining = new Joining(pointStart[island + 1]! - first);
  for (let index = switchStart[island]!; index < switchStart[island + 1]!; index++) {
    if (closedMask[index] === 0) continue;
    const a = joining.find(switchA[index]! - first);
    const b = joining.find(switchB[index]! - first);
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
  const { mechanisms, loadMechanism } = machine;
  const { loads, loadStart } = partition;
  const coilsIn: number[][] = [];
  const coilIslands: number[][] = Array.from({ length: mechanisms }, () => []);
  const shortable: boolean[] = [];
  const bridging: boolean[] = [];
  const lingering = new Uint8Array(mechanisms);
  for (let island = 0; island < partition.islands; island++) {
    const coils: number[] = [];
    coilsIn.push(coils);
    shortable.push(canShort(partition, island));
    bridging.push(
      partition.railEnd[island] === partition.pointStart[island + 1] &&
        partition.switchStart[island]! < partition.switchStart[island + 1]!,
    );
    // Between fewer than two rails nothing ever has a voltage, so nothing bears on the coils there.
    if (partition.railEnd[island]! - partition.pointStart[island]! < 2) continue;
    for (let load = loadStart[island]!; load < loadStart[island + 1]!; load++) {
      const mechanism = loadMechanism[loads[load]!]!;
      if (mechanism < 0 || coilIslands[mechanism]!.at(-1) === island) continue;
      coils.push(mechanism);
      coilIslands[mechanism]!.push(island);
    }
    if (coils.length > 0 && mayLandBetween(machine, partition, island))
      for (const mechanism of coils) lingering[mechanism] = 1;
  }
  return { partition, coilsIn, coilIslands, shortable, bridging, lingering };
}

/** The islands in which a mechanism has contacts. */
export const islandsOf = ({ partition }: Bearings, mechanism: number): Int32Array =>
  partition.islandList.subarray(partition.listStart[mechanism]!, partition.listStart[mechanism + 1]!);

/** The mechanisms that have contacts in an island; one may come several times. */
export const moversIn = ({ mechanism, switchStart }: Partition, island: number): Int32Array =>
  mechanism.subarray(switchStart[island]!, switchStart[island + 1]!);

/** The mechanisms on whose coils one bears; one may come several times. */
export function* bornBy(bearings: Bearings, mechanism: number): Generator<number> {
  for (const island of islandsOf(bearings, mechanism)) yield* bearings.coilsIn[island]!;
}

/** Whether a mechanism's position follows from more than its coil's voltage now. */
export const keepsState = ({ drive }: Machine, { lingering }: Bearings, mechanism: number): boolean =>
  (drive[mechanism]! > DRIVE.coil && drive[mechanism]! < DRIVE.act) || lingering[mechanism] === 1;

/**
 * The strongly connected parts: of each mechanism the number of its part, smaller than those of parts that bear on it, and
 * whether a way leads from it back to itself. Islands with several coils are vertices of their own, so that hundreds of
 * contacts and coils in one island are not as many pairs.
 */
export function feedback(
  { coilsIn, partition }: Bearings,
  mechanisms: number,
): { partOf: Int32Array; returns: (mechanism: number) => boolean } {
  const { listStart, islandList } = partition;
  const vertexOf = new Int32Array(coilsIn.length).fill(-1);
  const next: (readonly number[])[] = [];
  for (let mechanism = 0; mechanism < mechanisms; mechanism++) next.push([]);
  coilsIn.forEach((coils, island) => {
    if (coils.length === 1) vertexOf[island] = coils[0]!;
    else if (coils.length > 1) vertexOf[island] = next.push(coils) - 1;
  });
  for (let mechanism = 0; mechanism < mechanisms; mechanism++) {
    const onto: number[] = [];
    for (let index = listStart[mechanism]!; index < listStart[mechanism + 1]!; index++) {
      const vertex = vertexOf[islandList[index]!]!;
      if (vertex >= 0) onto.push(vertex);
    }
    next[mechanism] = onto;
  }
  const component = strongComponents(next.length, (vertex) => next[vertex]!);
  const sizes = new Int32Array(next.length);
  for (const number of component) sizes[number]!++;
  return {
    partOf: component.subarray(0, mechanisms),
    returns: (mechanism) => sizes[component[mechanism]!]! > 1 || next[mechanism]!.includes(mechanism),
  };
}
