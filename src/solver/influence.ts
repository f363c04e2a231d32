/**
 * For which mechanisms the order of operation can matter, read off what bears on what. Where nothing feeds back and nothing
 * remembers (a latch, a timer, a coil between its limits), every order of operation ends in the same state, and nothing
 * needs exploring.
 */
import { type Bearings, bearingsOf, feedback, keepsState } from './bearings.ts';
import type { Partition } from './islands.ts';
import type { Machine } from './machine.ts';

/** A contact, as far as it matters to exploring. */
export interface Touch {
  readonly island: number;
  readonly closedMask: number;
}

/** Whether a contact opens or closes somewhere among these masks of its mechanism. */
export const varies = ({ closedMask }: Touch, masks: readonly number[]): boolean => {
  const closed = (masks[0]! & ~closedMask) === 0;
  return masks.some((mask) => ((mask & ~closedMask) === 0) !== closed);
};

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
  /** By island: 1 where nothing moves by what comes of it (lamps, inputs): it can wait until all has settled. */
  readonly shown: Uint8Array;
  /** The islands tell nothing: every mechanism may bear on every other. */
  readonly whole: boolean;
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
  shown: new Uint8Array(0),
  whole: true,
});

/** The mechanisms for which order can matter, ascending: all that lead to one whose order does by itself. */
function relevantIn(
  machine: Machine,
  bearings: Bearings,
  shortable: readonly boolean[],
): { relevant: number[]; matters: Uint8Array } {
  const { mechanisms } = machine;
  const { partition } = bearings;
  const { coilIslands, contactIslands, switchStart, mechanism: mover } = partition;
  const { returns } = feedback(partition, mechanisms);
  const remembers = (mechanism: number): boolean => {
    if (keepsState(machine, bearings, mechanism) || returns(mechanism)) return true;
    for (let at = contactIslands.start[mechanism]!; at < contactIslands.start[mechanism + 1]!; at++)
      if (shortable[contactIslands.list[at]!]) return true;
    return false;
  };
  const matters = new Uint8Array(mechanisms);
  const queue: number[] = [];
  const reach = (mechanism: number): void => {
    if (matters[mechanism]) return;
    matters[mechanism] = 1;
    queue.push(mechanism);
  };
  for (let mechanism = 0; mechanism < mechanisms; mechanism++) if (remembers(mechanism)) reach(mechanism);
  const looked = new Uint8Array(partition.islands);
  for (const mechanism of queue) {
    for (let at = coilIslands.start[mechanism]!; at < coilIslands.start[mechanism + 1]!; at++) {
      const island = coilIslands.list[at]!;
      if (looked[island]) continue;
      looked[island] = 1;
      for (let index = switchStart[island]!; index < switchStart[island + 1]!; index++) reach(mover[index]!);
    }
  }
  return { relevant: queue.sort((a, b) => a - b), matters };
}

/** As `relevant`, where a short circuit is cleared on the way: contacts between two fuses then decide which of them opens. */
export function relevantWhenTripping(machine: Machine, partition: Partition): readonly number[] {
  if (partition.whole) return everything(machine).relevant;
  const bearings = bearingsOf(machine, partition);
  const { shortable, bridging } = bearings;
  return relevantIn(
    machine,
    bearings,
    shortable.map((could, island) => could || bridging[island]!),
  ).relevant;
}

function findInfluence(machine: Machine, partition: Partition): Influence {
  const { mechanisms } = machine;
  const bearings = bearingsOf(machine, partition);
  const { shortable } = bearings;
  const { relevant, matters } = relevantIn(machine, bearings, shortable);
  const { mechanism: mover, closedMask, switchStart, coilsIn, islands } = partition;
  const relevantCoils: number[][] = [];
  const touches: Touch[][] = [];
  for (let index = 0; index < mechanisms; index++) touches.push([]);
  const slow = new Uint8Array(mechanisms);
  const shown = new Uint8Array(islands);
  for (let island = 0; island < islands; island++) {
    const coils: number[] = [];
    relevantCoils.push(coils);
    const [from, end] = [coilsIn.start[island]!, coilsIn.start[island + 1]!];
    for (let index = from; index < end; index++)
      if (matters[coilsIn.list[index]!]) coils.push(coilsIn.list[index]!);
    if (from === end && !shortable[island]) shown[island] = 1;
    if (coils.length === 0 && !shortable[island]) continue;
    for (let index = switchStart[island]!; index < switchStart[island + 1]!; index++) {
      touches[mover[index]!]!.push({ island, closedMask: closedMask[index]! });
      slow[mover[index]!] = 1;
    }
  }
  return { relevant, slow, touches, coilsIn: relevantCoils, shortable, shown, whole: false };
}
