/**
 * Which mechanism's contacts bear on which mechanism's coil, read off the islands. Where nothing feeds back and nothing
 * remembers (a latch, a timer, a coil between its limits), every order of operation ends in the same state, and nothing needs exploring.
 */
import { DRIVE, type Machine } from './machine.ts';
import type { Island, Partition } from './partition.ts';
import { strongComponents } from './strong-components.ts';

export interface Influence {
  /** Groups of mechanisms in which the order of operation can matter; groups don't bear on one another. */
  readonly groups: readonly (readonly number[])[];
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

/** When islands tell nothing, every mechanism may bear on every other. */
const everything = (machine: Machine): Influence => ({
  groups: machine.mechanisms > 0 ? [Array.from({ length: machine.mechanisms }, (_, index) => index)] : [],
});

function findInfluence(machine: Machine, partition: Partition): Influence {
  const { mechanisms, drive, loadMechanism } = machine;
  const coilsIn = partition.islands.map(({ loads }) => [
    ...new Set([...loads].map((load) => loadMechanism[load]!).filter((at) => at >= 0)),
  ]);
  const shortable = partition.islands.map(canShort);
  const lingering = new Set(
    partition.islands.flatMap((island, number) => (mayLandBetween(machine, island) ? coilsIn[number]! : [])),
  );
  const bears: number[][] = Array.from({ length: mechanisms }, (_, mechanism) => [
    ...new Set([...partition.islandsOf[mechanism]!].flatMap((island) => coilsIn[island]!)),
  ]);
  const components = strongComponents(mechanisms, (mechanism) => bears[mechanism]!);
  const sizes = new Map<number, number>();
  for (const component of components) sizes.set(component, (sizes.get(component) ?? 0) + 1);
  const remembers = (mechanism: number): boolean =>
    (drive[mechanism]! > DRIVE.coil && drive[mechanism]! < DRIVE.act) ||
    lingering.has(mechanism) ||
    sizes.get(components[mechanism]!)! > 1 ||
    bears[mechanism]!.includes(mechanism) ||
    [...partition.islandsOf[mechanism]!].some((island) => shortable[island]);

  // Everything that leads to something that remembers, found backwards.
  const bornBy: number[][] = Array.from({ length: mechanisms }, () => []);
  bears.forEach((list, mechanism) => {
    for (const other of list) bornBy[other]!.push(mechanism);
  });
  const relevant = new Set<number>();
  const queue = Array.from({ length: mechanisms }, (_, index) => index).filter(remembers);
  for (const mechanism of queue) {
    if (relevant.has(mechanism)) continue;
    relevant.add(mechanism);
    queue.push(...bornBy[mechanism]!);
  }

  const groupOf = new Map<number, number[]>();
  for (const mechanism of [...relevant].sort((a, b) => a - b)) {
    if (groupOf.has(mechanism)) continue;
    const group: number[] = [];
    const reach = [mechanism];
    for (const at of reach) {
      if (groupOf.has(at) || !relevant.has(at)) continue;
      groupOf.set(at, group);
      group.push(at);
      reach.push(...bears[at]!, ...bornBy[at]!);
    }
    group.sort((a, b) => a - b);
  }
  // A short circuit in one group could put out another: such groups are explored together.
  const groups = [...new Set(groupOf.values())];
  const risky = groups.filter((group) =>
    group.some((at) => [...partition.islandsOf[at]!].some((island) => shortable[island])),
  );
  if (risky.length === 0) return { groups };
  return { groups: [groups.flat().sort((a, b) => a - b)] };
}
