/**
 * What bears on what, read off the islands: whose contacts lie where whose coil is. Where nothing feeds back and nothing
 * remembers (a latch, a timer, a coil between its limits), every order of operation ends in the same state, and nothing
 * needs exploring.
 */
import { DRIVE, type Machine } from './machine.ts';
import type { Island, Partition } from './partition.ts';
import { strongComponents } from './strong-components.ts';

/** A contact, as far as it matters to exploring. */
export interface Touch {
  readonly island: number;
  readonly closedMask: number;
}

export interface Influence {
  /** Mechanisms for which the order of operation can matter, ascending; all others follow from them. */
  readonly relevant: readonly number[];
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
function canShort({ rails, points, switchA, switchB, closedMask }: Island): boolean {
  if (rails < 2) return false;
  const parent = Int32Array.from({ length: points }, (_, index) => index);
  const find = (point: number): number => {
    let at = point;
    while (parent[at] !== at) at = parent[at]!;
    return at;
  };
  for (let index = 0; index < switchA.length; index++) {
    if (closedMask[index] === 0) continue;
    const a = find(switchA[index]!);
    const b = find(switchB[index]!);
    if (a === b) continue;
    if (Math.max(a, b) < rails) return true;
    parent[Math.max(a, b)] = Math.min(a, b);
  }
  return false;
}

/**
 * Whether a coil of the island could land between its limits, where it stays as it is and so remembers. Left out where
 * that can't be: a lone load has the difference of two rails or nothing, and loads that all hang on one rail have
 * nothing in series with them.
 */
function mayLandBetween(machine: Machine, { rails, loads, loadA, loadB, siemens, scratch }: Island): boolean {
  if (rails < 2) return false;
  let common = -1;
  let mixed = false;
  let conducting = 0;
  for (let load = 0; load < loads.length; load++) {
    if (siemens[load] === 0) continue;
    conducting++;
    const a = loadA[load]!;
    const b = loadB[load]!;
    if (a < rails && b < rails) continue;
    const rail = a < rails ? a : b < rails ? b : -1;
    if (rail < 0 || (common >= 0 && rail !== common)) mixed = true;
    common = rail;
  }
  const within = (load: number, one: number, other: number): boolean => {
    const volts = Math.hypot(scratch.re[one]! - scratch.re[other]!, scratch.im[one]! - scratch.im[other]!);
    return volts > machine.releaseVolts[load]! && volts < machine.operateVolts[load]!;
  };
  for (let load = 0; load < loads.length; load++) {
    if (machine.loadMechanism[loads[load]!]! < 0 || (loadA[load]! < rails && loadB[load]! < rails)) continue;
    if (mixed && conducting > 1) return true;
    for (let one = 0; one < rails; one++)
      for (let other = 0; other < one; other++) if (within(loads[load]!, one, other)) return true;
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
  touches: [],
  coilsIn: [],
  shortable: [],
  whole: true,
});

function findInfluence(machine: Machine, partition: Partition): Influence {
  const { mechanisms, drive, loadMechanism } = machine;
  const { islands, islandsOf } = partition;
  const coilsIn = islands.map(({ loads }) => {
    const coils = new Set<number>();
    for (const load of loads) if (loadMechanism[load]! >= 0) coils.add(loadMechanism[load]!);
    return [...coils];
  });
  const shortable = islands.map(canShort);
  const lingering = new Set(
    islands.flatMap((island, number) => (mayLandBetween(machine, island) ? coilsIn[number]! : [])),
  );
  const bears: number[][] = Array.from({ length: mechanisms }, (_, mechanism) => [
    ...new Set([...islandsOf[mechanism]!].flatMap((island) => coilsIn[island]!)),
  ]);
  const components = strongComponents(mechanisms, (mechanism) => bears[mechanism]!);
  const sizes = new Map<number, number>();
  for (const component of components) sizes.set(component, (sizes.get(component) ?? 0) + 1);
  const remembers = (mechanism: number): boolean =>
    (drive[mechanism]! > DRIVE.coil && drive[mechanism]! < DRIVE.act) ||
    lingering.has(mechanism) ||
    sizes.get(components[mechanism]!)! > 1 ||
    bears[mechanism]!.includes(mechanism) ||
    islandsOf[mechanism]!.some((island) => shortable[island]!);

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
  islands.forEach(({ mechanism, closedMask }, island) => {
    if (relevantCoils[island]!.length === 0 && !shortable[island]) return;
    for (let index = 0; index < mechanism.length; index++)
      touches[mechanism[index]!]!.push({ island, closedMask: closedMask[index]! });
  });
  const relevant: number[] = [];
  for (let mechanism = 0; mechanism < mechanisms; mechanism++)
    if (matters[mechanism]) relevant.push(mechanism);
  return { relevant, touches, coilsIn: relevantCoils, shortable, whole: false };
}
