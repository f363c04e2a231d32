/**
 * Mechanisms on the move that can't get in each other's way. From a state on, only some contacts can still change:
 * those of mechanisms on the move, of the coils these bear on, and so on. What such contacts don't connect is
 * independent, so each cluster is explored by itself and the endings are multiplied; ten contactors that one
 * emergency stop puts out need not be tried in 3^10 combinations.
 */
import { JoinedSets } from '../graph/index.ts';
import { type Influence, varies } from './influence.ts';
import { DRIVE, type Machine } from './machine.ts';
import type { State } from './state.ts';

/** Masks that a mechanism can still take. */
type Future = readonly number[];

const ANYWHERE: Future = [1, 2, 3];

/** Without a change of its command. */
function futureOf(state: State, mechanism: number): Future {
  const at = state.at[mechanism]!;
  const goal = state.goal[mechanism]!;
  if (at === goal) return [at];
  const travelling = (at & (at - 1)) !== 0;
  return travelling ? [at, goal, state.heading[mechanism]!] : [at, at | goal, goal];
}

/**
 * The clusters of `group` that are on the move, each with everything that it may set moving. Empty: the group rests.
 */
export function clustersOf(
  machine: Machine,
  influence: Influence,
  state: State,
  group: readonly number[],
): number[][] {
  const movers = group.filter((mechanism) => state.at[mechanism] !== state.goal[mechanism]);
  if (movers.length === 0) return [];
  if (movers.length === 1 || influence.whole) return [[...group]];
  const inGroup = new Set(group);
  const futures = new Map(movers.map((mechanism) => [mechanism, futureOf(state, mechanism)]));
  // Mechanisms by their number, islands below nothing.
  const groups = new JoinedSets<number>();
  const queue = [...movers];
  const looked = new Set<number>();
  for (const mechanism of queue) {
    const future = futures.get(mechanism)!;
    for (const touch of influence.touches[mechanism]!) {
      if (!varies(touch, future)) continue;
      groups.join(mechanism, -1 - touch.island);
      if (looked.has(touch.island)) continue;
      looked.add(touch.island);
      for (const coil of influence.coilsIn[touch.island]!) {
        if (!inGroup.has(coil)) continue;
        groups.join(coil, mechanism);
        if (futures.get(coil) === ANYWHERE || machine.frozen[coil]) continue;
        if (machine.drive[coil]! >= DRIVE.act) continue;
        futures.set(coil, ANYWHERE);
        queue.push(coil);
      }
    }
  }
  const clusters = new Map<number, number[]>();
  for (const mechanism of [...new Set(queue)].sort((a, b) => a - b)) {
    const root = groups.find(mechanism);
    const cluster = clusters.get(root);
    if (cluster) cluster.push(mechanism);
    else clusters.set(root, [mechanism]);
  }
  return [...clusters.values()];
}
