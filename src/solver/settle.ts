/**
 * Settling without time: in each wave every mechanism that is commanded elsewhere goes, all at once, until none is. Those
 * whose opening on the way somebody may notice take two waves: all their contacts are open between. Where the order can't
 * matter this is the answer; explore.ts tells whether it can.
 */
import { command } from './coils.ts';
import { evaluateIsland } from './evaluate.ts';
import { influenceOf } from './influence.ts';
import { DRIVE, type Machine } from './machine.ts';
import { evaluateWhole } from './network.ts';
import { partitionFor } from './partition.ts';
import { clearShort } from './protection.ts';
import type { State } from './state.ts';

/** Marks the islands of a mechanism that has moved for evaluation; a feeding device changes the partition. */
export function moved(machine: Machine, state: State, mechanism: number, pending: Pending): void {
  if (machine.drive[mechanism] === DRIVE.feed) {
    pending.all = true;
    return;
  }
  const { dirty, queue, contactIslands } = state.partition;
  const { start, list } = contactIslands;
  const end = start[mechanism + 1]!;
  for (let index = start[mechanism]!; index < end; index++) {
    const island = list[index]!;
    if (dirty[island]) continue;
    dirty[island] = 1;
    queue[pending.islands++] = island;
  }
}

/** What has to be evaluated, and which mechanisms may then be commanded elsewhere. */
export interface Pending {
  islands: number;
  candidates: number;
  all: boolean;
}

export const nothingPending = (): Pending => ({ islands: 0, candidates: 0, all: false });

/** Puts a mechanism on the working list of those whose command may change. */
export const consider = (machine: Machine, mechanism: number, pending: Pending): void => {
  if (machine.candidate[mechanism]) return;
  machine.candidate[mechanism] = 1;
  machine.candidates[pending.candidates++] = mechanism;
};

function forget(state: State, pending: Pending): void {
  const { dirty, queue } = state.partition;
  for (let index = 0; index < pending.islands; index++) dirty[queue[index]!] = 0;
  pending.islands = 0;
}

function evaluateAll(machine: Machine, state: State, pending: Pending): void {
  for (;;) {
    forget(state, pending);
    pending.all = false;
    state.partition = partitionFor(machine, state.at, state.supplyOn);
    let shorted: readonly (readonly number[])[] = [];
    let apart = !(state.whole || state.partition.whole);
    if (apart) {
      for (let island = 0; island < state.partition.islands; island++) {
        if (!evaluateIsland(machine, state, island)) {
          apart = false;
          break;
        }
      }
    }
    if (!apart) {
      shorted = evaluateWhole(machine, state);
      // Two supplies joined by a contact: their islands no longer stand alone.
      if (shorted.length === 0 && !state.partition.whole) state.whole = true;
    }
    const [group] = shorted;
    if (!group) break;
    clearShort(machine, state, group);
  }
  for (let mechanism = 0; mechanism < machine.mechanisms; mechanism++) consider(machine, mechanism, pending);
}

/**
 * Brings voltages and commands up to date with where the mechanisms stand. Short circuits are cleared here.
 *
 * @param shown - by island: 1 where it is left pending, since nothing moves by what comes of it
 */
export function update(machine: Machine, state: State, pending: Pending, shown?: Uint8Array): void {
  if (state.whole || state.partition.whole) pending.all = true;
  if (!pending.all) {
    const { dirty, queue, coilsIn } = state.partition;
    const { start, list } = coilsIn;
    let left = 0;
    for (let index = 0; index < pending.islands; index++) {
      const island = queue[index]!;
      if (shown !== undefined && shown[island] === 1) {
        queue[left++] = island;
        continue;
      }
      dirty[island] = 0;
      if (!evaluateIsland(machine, state, island)) {
        pending.all = true;
        break;
      }
      const end = start[island + 1]!;
      for (let coil = start[island]!; coil < end; coil++) consider(machine, list[coil]!, pending);
    }
    if (!pending.all) pending.islands = left;
  }
  if (pending.all) evaluateAll(machine, state, pending);
  for (let index = 0; index < pending.candidates; index++)
    command(machine, state, machine.candidates[index]!);
}

/** Takes the candidates out of the working list; call after they have been looked at. */
export function clearCandidates(machine: Machine, pending: Pending): void {
  for (let index = 0; index < pending.candidates; index++) machine.candidate[machine.candidates[index]!] = 0;
  pending.candidates = 0;
}

/** Waves after which a circuit is taken to go on for ever, beyond one for each mechanism in a chain. */
const MOST_WAVES = 4_096;

/** Notices that the same positions come round again (Brent 1980): one remembered state, a new one at each power of two. */
class Round {
  private hash = 0;
  private remembered: { hash: number; at: Uint8Array } | undefined;
  private next = 16;

  /** A mechanism has gone from one mask to another. */
  moved(mechanism: number, before: number, after: number): void {
    this.hash ^= mix(mechanism, before) ^ mix(mechanism, after);
  }

  /** Whether this state is the remembered one. */
  again(waves: number, at: Uint8Array): boolean {
    const { remembered } = this;
    if (remembered?.hash === this.hash && remembered.at.every((mask, index) => mask === at[index]))
      return true;
    if (waves >= this.next) {
      this.remembered = { hash: this.hash, at: at.slice() };
      this.next *= 2;
    }
    return false;
  }
}

const mix = (mechanism: number, mask: number): number => {
  let hash = Math.imul(mechanism * 64 + mask + 1, 0x9e3779b1);
  hash ^= hash >>> 15;
  return Math.imul(hash, 0x85ebca6b);
};

/**
 * Settles a state in which the mechanisms of `pending` have changed or are commanded elsewhere.
 *
 * @returns the number of waves, or -1 when the same positions come round again, or no end is in sight: no steady state in
 * this order
 */
export function settleFrom(machine: Machine, state: State, pending: Pending): number {
  const { at, goal } = state;
  const { candidate, candidates, travellers } = machine;
  let partition = state.partition;
  let { slow, shown } = influenceOf(machine, partition);
  const most = MOST_WAVES + 2 * machine.mechanisms;
  let round: Round | undefined;
  for (let waves = 0; ; waves++) {
    update(machine, state, pending, shown);
    if (state.partition !== partition) {
      partition = state.partition;
      ({ slow, shown } = influenceOf(machine, partition));
    }
    const count = pending.candidates;
    let any = false;
    let travelling = 0;
    for (let index = 0; index < count; index++) {
      const mechanism = candidates[index]!;
      candidate[mechanism] = 0;
      const from = at[mechanism]!;
      const to = goal[mechanism]!;
      if (from === to) continue;
      const leaves = slow[mechanism] === 1 && (from & (from - 1)) === 0;
      const mask = leaves ? from | to : to;
      round?.moved(mechanism, from, mask);
      at[mechanism] = mask;
      any = true;
      moved(machine, state, mechanism, pending);
      if (!leaves) continue;
      state.heading[mechanism] = to;
      travellers[travelling++] = mechanism;
    }
    pending.candidates = 0;
    while (travelling > 0) consider(machine, travellers[--travelling]!, pending);
    if (!any) {
      if (pending.islands > 0) update(machine, state, pending);
      state.restless = false;
      return waves;
    }
    if (waves === 15) round = new Round();
    if (round?.again(waves, at) || waves > most) {
      update(machine, state, pending);
      clearCandidates(machine, pending);
      state.restless = true;
      return -1;
    }
  }
}

/** Works everything out afresh and settles: the first settling of a new state. */
export function settleAll(machine: Machine, state: State): number {
  return settleFrom(machine, state, { ...nothingPending(), all: true });
}

/** Commands acted mechanisms (button, selector, isolator…) to a position and settles. */
export function settleAfter(machine: Machine, state: State, mechanisms: readonly number[]): number {
  const pending = nothingPending();
  for (const mechanism of mechanisms) consider(machine, mechanism, pending);
  if (state.restless)
    for (let mechanism = 0; mechanism < machine.mechanisms; mechanism++)
      consider(machine, mechanism, pending);
  return settleFrom(machine, state, pending);
}
