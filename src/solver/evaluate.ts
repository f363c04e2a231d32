/** The voltages of one island: contacts joined, then the resistive remainder. */

import type { Partition } from './islands.ts';
import type { Machine } from './machine.ts';
import { solveResistors } from './star-mesh.ts';
import type { State } from './state.ts';

/** Several unknown potentials hang on one another: loads in series, or a back-feed. */
function solveLinked(machine: Machine, partition: Partition, island: number): void {
  const { parent, volts, loadStart, loadA, loadB } = partition;
  const railEnd = partition.railEnd[island]!;
  const a: number[] = [];
  const b: number[] = [];
  const siemens: number[] = [];
  for (let load = loadStart[island]!; load < loadStart[island + 1]!; load++) {
    a.push(parent[loadA[load]!]!);
    b.push(parent[loadB[load]!]!);
    siemens.push(partition.siemens[load]!);
  }
  const { floating, steps } = solveResistors({ a, b, siemens }, (point) => point < railEnd, volts);
  machine.effort.steps += steps;
  // A burnt-out load may hang between such a part and a rail; its voltage is nothing definite.
  for (const point of floating) for (const along of volts) along[point] = Number.NaN;
}

/** All loads hang on one rail: each has the difference of the rail its other end is joined to, or nothing. */
function evaluateHung(state: State, partition: Partition, island: number): void {
  const { parent, volts, loads, loadA, loadB, loadStart } = partition;
  const first = volts[0]!;
  const firstAcross = state.volts[0]!;
  const railEnd = partition.railEnd[island]!;
  const common = partition.common[island]!;
  const end = loadStart[island + 1]!;
  for (let load = loadStart[island]!; load < end; load++) {
    const a = loadA[load]!;
    const sign = a < railEnd ? -1 : 1;
    let root = sign < 0 ? loadB[load]! : a;
    while (parent[root] !== root) root = parent[root]!;
    const index = loads[load]!;
    const fed = root < railEnd;
    firstAcross[index] = fed ? sign * (first[root]! - first[common]!) : 0;
    for (let axis = 1; axis < volts.length; axis++) {
      const along = volts[axis]!;
      state.volts[axis]![index] = fed ? sign * (along[root]! - along[common]!) : 0;
    }
  }
}

/** Joins the points between which contacts are closed; false when two rails come together. */
function joinClosed(at: Uint8Array, partition: Partition, island: number): boolean {
  const { parent, mechanism, closedMask, switchA, switchB, switchStart, pointStart } = partition;
  const railEnd = partition.railEnd[island]!;
  const pointEnd = pointStart[island + 1]!;
  // Rails lead whatever they are joined to, so they stay their own.
  for (let point = railEnd; point < pointEnd; point++) parent[point] = point;
  const end = switchStart[island + 1]!;
  for (let index = switchStart[island]!; index < end; index++) {
    if ((at[mechanism[index]!]! & ~closedMask[index]!) !== 0) continue;
    // Path halving keeps the ways short where hundreds of contacts hang together.
    let a = switchA[index]!;
    while (parent[a] !== a) {
      parent[a] = parent[parent[a]!]!;
      a = parent[a]!;
    }
    let b = switchB[index]!;
    while (parent[b] !== b) {
      parent[b] = parent[parent[b]!]!;
      b = parent[b]!;
    }
    if (a === b) continue;
    if (a < railEnd && b < railEnd) return false;
    if (a < b) parent[b] = a;
    else parent[a] = b;
  }
  return true;
}

/**
 * Works out the voltage across each load of an island into `state.re` and `state.im`.
 *
 * @returns false on a short circuit: two rails of different potential are joined; nothing is written then
 */
export function evaluateIsland(machine: Machine, state: State, island: number): boolean {
  const { partition } = state;
  machine.effort.steps += partition.steps[island]!;
  if (!joinClosed(state.at, partition, island)) return false;
  if (partition.common[island]! >= 0) evaluateHung(state, partition, island);
  else evaluateLoads(machine, state, partition, island);
  return true;
}

/** The general case: each cell is the mean of what its loads hang on, or several hang on one another. */
function evaluateLoads(machine: Machine, state: State, partition: Partition, island: number): void {
  const { parent, volts, sum, currents, loads, loadA, loadB, siemens } = partition;
  const axes = volts.length;
  const first = volts[0]!;
  const firstAcross = state.volts[0]!;
  const firstCurrent = currents[0]!;
  const railEnd = partition.railEnd[island]!;
  const pointEnd = partition.pointStart[island + 1]!;
  const from = partition.loadStart[island]!;
  const end = partition.loadStart[island + 1]!;
  // Parents always have a smaller index, so one ascending pass flattens every chain.
  for (let point = railEnd; point < pointEnd; point++) {
    parent[point] = parent[parent[point]!]!;
    sum[point] = 0;
    firstCurrent[point] = 0;
    for (let axis = 1; axis < axes; axis++) currents[axis]![point] = 0;
  }
  let linked = false;
  for (let load = from; load < end; load++) {
    const g = siemens[load]!;
    if (g === 0) continue;
    const a = parent[loadA[load]!]!;
    const b = parent[loadB[load]!]!;
    if (a === b) continue;
    if (a >= railEnd) {
      if (b >= railEnd) linked = true;
      else {
        sum[a] = sum[a]! + g;
        firstCurrent[a] = firstCurrent[a]! + g * first[b]!;
        for (let axis = 1; axis < axes; axis++) currents[axis]![a]! += g * volts[axis]![b]!;
      }
    } else if (b >= railEnd) {
      sum[b] = sum[b]! + g;
      firstCurrent[b] = firstCurrent[b]! + g * first[a]!;
      for (let axis = 1; axis < axes; axis++) currents[axis]![b]! += g * volts[axis]![a]!;
    }
  }
  for (let point = railEnd; point < pointEnd; point++) {
    if (parent[point] !== point) continue;
    const g = sum[point]!;
    // A conductor that nothing holds has no potential to speak of; NaN says so below.
    first[point] = g === 0 ? Number.NaN : firstCurrent[point]! / g;
    for (let axis = 1; axis < axes; axis++)
      volts[axis]![point] = g === 0 ? Number.NaN : currents[axis]![point]! / g;
  }
  if (linked) solveLinked(machine, partition, island);
  for (let load = from; load < end; load++) {
    const a = parent[loadA[load]!]!;
    const b = parent[loadB[load]!]!;
    const index = loads[load]!;
    const across = first[a]! - first[b]!;
    firstAcross[index] = Number.isNaN(across) ? 0 : across;
    for (let axis = 1; axis < axes; axis++) {
      const also = volts[axis]![a]! - volts[axis]![b]!;
      state.volts[axis]![index] = Number.isNaN(also) ? 0 : also;
    }
  }
}
