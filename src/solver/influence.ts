/**
 * What bears on what, read off the islands: whose contacts lie where whose coil is. Where nothing feeds back and nothing
 * remembers (a latch, a timer, a coil between its limits), every order of operation ends in the same state, and nothing
 * needs exploring.
 */
import { distance } from './axes.ts';
import { Joining } from './joining.ts';
import { DRIVE, type Machine } from './machine.ts';
import type { Partition } from './partition.ts';
import { strongComponents } from './strong-components.ts';

/** A contact, as far as it matters to exploring. */
export interface Touch {
  readonly island: number;
  readonly closedMask: number;
}

export interface Influence {
  /** Mechanisms for which the order of operation can matter, ascending; all others follow from them. */
  readonly relevant: readonly number[];
  /**
   * By mechanism: 1 where it matters that its contacts are all open on its way, because a relevant coil, or a short circuit,
   * may see it.
   */
  readonly slow: Uint8Array;
  /** By mechanism: its contacts in islands with a relevant coil, or in which a short circuit could come about. */
  readonly touches: readonly (readonly Touch[])[];
  /** By island: the relevant mechanisms that have a coil in it. */
  readonly coilsIn: readonly (readonly number[])[];
  /** By island: contacts of it could join two rails. */
  readonly shortable: readonly boolean[];
  /** The islands tell nothing: every mechanism may bear on every other. */
  readonly whole: boolean;
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
  if (railEnd - first < 2) return false;
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

interface Known {
  readonly influence: Influence;
  readonly drive: Uint8Array;
}

const same = (one: Uint8Array, other: Uint8Array): boolean =>
  one === other || (one.length === other.length && one.every((value, index) => value === other[index]));

const known = new WeakMap<Partition, Known>();

/** The influence of a partition, worked out once. */
export function influenceOf(machine: Machine, partition: Partition): Influence {
  const before = known.get(partition);
  // Variants of a machine share partitions; their mechanisms may be moved otherwise.
  if (before && same(before.drive, machine.drive)) return before.influence;
  const influence = partition.whole ? everything(machine) : findInfluence(machine, partition);
  known.set(partition, { influence, drive: machine.drive });
  return influence;
}

const everything = (machine: Machine): Influence => ({
  relevant: Array.from({ length: machine.mechanisms }, (_, index) => index),
  slow: new Uint8Array(machine.mechanisms).fill(1),
  touches: [],
  coilsIn: [],
  shortable: [],
  whole: true,
});

function findInfluence(machine: Machine, partition: Partition): Influence {
  const { mechanisms, drive, loadMechanism } = machine;
  const { loads, loadStart, listStart, islandList } = partition;
  const coilsIn: number[][] = [];
  const shortable: boolean[] = [];
  const lingering = new Uint8Array(mechanisms);
  for (let island = 0; island < partition.islands; island++) {
    const coils: number[] = [];
    for (let load = loadStart[island]!; load < loadStart[island + 1]!; load++) {
      const mechanism = loadMechanism[loads[load]!]!;
      if (mechanism >= 0 && !coils.includes(mechanism)) coils.push(mechanism);
    }
    coilsIn.push(coils);
    shortable.push(canShort(partition, island));
    if (coils.length > 0 && mayLandBetween(machine, partition, island))
      for (const mechanism of coils) lingering[mechanism] = 1;
  }
  const islandsOf = (mechanism: number): Int32Array =>
    islandList.subarray(listStart[mechanism]!, listStart[mechanism + 1]!);
  const bears: number[][] = Array.from({ length: mechanisms }, (_, mechanism) => {
    const found = new Set<number>();
    for (const island of islandsOf(mechanism)) for (const coil of coilsIn[island]!) found.add(coil);
    return [...found];
  });
  const components = strongComponents(mechanisms, (mechanism) => bears[mechanism]!);
  const sizes = new Map<number, number>();
  for (const component of components) sizes.set(component, (sizes.get(component) ?? 0) + 1);
  const remembers = (mechanism: number): boolean =>
    (drive[mechanism]! > DRIVE.coil && drive[mechanism]! < DRIVE.act) ||
    lingering[mechanism] === 1 ||
    sizes.get(components[mechanism]!)! > 1 ||
    bears[mechanism]!.includes(mechanism) ||
    islandsOf(mechanism).some((island) => shortable[island]!);

  // Everything that leads to something that remembers, found backwards.
  const bornBy: number[][] = Array.from({ length: mechanisms }, () => []);
  bears.forEach((list, mechanism) => {
    for (const other of list) bornBy[other]!.push(mechanism);
  });
  const matters = new Uint8Array(mechanisms);
  const queue: number[] = [];
  for (let mechanism = 0; mechanism < mechanisms; mechanism++)
    if (remembers(mechanism)) queue.push(mechanism);
  for (const mechanism of queue) {
    if (matters[mechanism]) continue;
    matters[mechanism] = 1;
    queue.push(...bornBy[mechanism]!);
  }

  const touches: Touch[][] = Array.from({ length: mechanisms }, () => []);
  const relevantCoils = coilsIn.map((coils) => coils.filter((mechanism) => matters[mechanism]));
  const { mechanism: mover, closedMask, switchStart } = partition;
  for (let island = 0; island < partition.islands; island++) {
    if (relevantCoils[island]!.length === 0 && !shortable[island]) continue;
    for (let index = switchStart[island]!; index < switchStart[island + 1]!; index++)
      touches[mover[index]!]!.push({ island, closedMask: closedMask[index]! });
  }
  const relevant: number[] = [];
  for (let mechanism = 0; mechanism < mechanisms; mechanism++)
    if (matters[mechanism]) relevant.push(mechanism);
  const slow = Uint8Array.from({ length: mechanisms }, (_, mechanism) =>
    touches[mechanism]!.length > 0 ? 1 : 0,
  );
  return { relevant, slow, touches, coilsIn: relevantCoils, shortable, whole: false };
}
