/**
 * Which mechanism's contacts bear on which mechanism's coil, read off the islands. Where nothing feeds back and nothing
 * remembers, every order of operation ends in the same state, and nothing needs exploring.
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

const known = new WeakMap<Partition, Influence>();

/** The influence of a partition, worked out once. */
export function influenceOf(machine: Machine, partition: Partition): Influence {
  const before = known.get(partition);
  if (before) return before;
  const made = partition.whole ? everything(machine) : findInfluence(machine, partition);
  known.set(partition, made);
  return made;
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
  const bears: number[][] = Array.from({ length: mechanisms }, (_, mechanism) => [
    ...new Set([...partition.islandsOf[mechanism]!].flatMap((island) => coilsIn[island]!)),
  ]);
  const components = strongComponents(mechanisms, (mechanism) => bears[mechanism]!);
  const sizes = new Map<number, number>();
  for (const component of components) sizes.set(component, (sizes.get(component) ?? 0) + 1);
  const remembers = (mechanism: number): boolean =>
    (drive[mechanism]! > DRIVE.coil && drive[mechanism]! < DRIVE.act) ||
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
