/** The voltages of one island: contacts joined, then the resistive remainder. */
import type { Machine } from './machine.ts';
import type { Island, Scratch } from './partition.ts';
import { solveResistors } from './star-mesh.ts';
import type { State } from './state.ts';

/** Several unknown potentials hang on one another: loads in series, or a back-feed. */
function solveLinked(machine: Machine, island: Island, { parent, re, im }: Scratch): void {
  const { rails, loadA, loadB, siemens } = island;
  const a: number[] = [];
  const b: number[] = [];
  for (let load = 0; load < loadA.length; load++) {
    a.push(parent[loadA[load]!]!);
    b.push(parent[loadB[load]!]!);
  }
  const { floating, steps } = solveResistors(
    { a, b, siemens: Array.from(siemens) },
    (point) => point < rails,
    re,
    im,
  );
  machine.effort.steps += steps;
  // A burnt-out load may hang between such a part and a rail; its voltage is nothing definite.
  for (const point of floating) re[point] = Number.NaN;
}

/** All loads hang on one rail: each has the difference of the rail its other end is joined to, or nothing. */
function evaluateHung(state: State, island: Island, phases: boolean): void {
  const { rails, loads, loadA, loadB, common } = island;
  const { parent, re, im } = island.scratch;
  for (let load = 0; load < loads.length; load++) {
    const a = loadA[load]!;
    let root = a < rails ? loadB[load]! : a;
    while (parent[root] !== root) root = parent[root]!;
    const index = loads[load]!;
    const sign = a < rails ? -1 : 1;
    const fed = root < rails;
    state.re[index] = fed ? sign * (re[root]! - re[common]!) : 0;
    if (phases) state.im[index] = fed ? sign * (im[root]! - im[common]!) : 0;
  }
}

/**
 * Works out the voltage across each load of an island into `state.re` and `state.im`.
 *
 * @returns false on a short circuit: two rails of different potential are joined; nothing is written then
 */
export function evaluateIsland(machine: Machine, state: State, island: Island): boolean {
  const { rails, points, mechanism, closedMask, switchA, switchB, loads, loadA, loadB, siemens } = island;
  const { parent, re, im, sum, sumRe, sumIm } = island.scratch;
  const { at } = state;
  const { phases } = machine;
  machine.effort.steps += points + mechanism.length + 2 * loads.length;
  for (let point = 0; point < points; point++) parent[point] = point;
  for (let index = 0; index < mechanism.length; index++) {
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
    if (a < rails && b < rails) return false;
    if (a < b) parent[b] = a;
    else parent[a] = b;
  }
  if (island.common >= 0) {
    evaluateHung(state, island, phases);
    return true;
  }
  // Parents always have a smaller index, so one ascending pass flattens every chain.
  for (let point = rails; point < points; point++) {
    parent[point] = parent[parent[point]!]!;
    sum[point] = 0;
    sumRe[point] = 0;
    sumIm[point] = 0;
  }
  let linked = false;
  for (let load = 0; load < loadA.length; load++) {
    const g = siemens[load]!;
    if (g === 0) continue;
    const a = parent[loadA[load]!]!;
    const b = parent[loadB[load]!]!;
    if (a === b) continue;
    if (a >= rails) {
      if (b >= rails) linked = true;
      else {
        sum[a] = sum[a]! + g;
        sumRe[a] = sumRe[a]! + g * re[b]!;
        if (phases) sumIm[a] = sumIm[a]! + g * im[b]!;
      }
    } else if (b >= rails) {
      sum[b] = sum[b]! + g;
      sumRe[b] = sumRe[b]! + g * re[a]!;
      if (phases) sumIm[b] = sumIm[b]! + g * im[a]!;
    }
  }
  for (let point = rails; point < points; point++) {
    if (parent[point] !== point) continue;
    const g = sum[point]!;
    // A conductor that nothing holds has no potential to speak of; NaN says so below.
    re[point] = g === 0 ? Number.NaN : sumRe[point]! / g;
    im[point] = phases && g !== 0 ? sumIm[point]! / g : 0;
  }
  if (linked) solveLinked(machine, island, island.scratch);
  for (let load = 0; load < loadA.length; load++) {
    const a = parent[loadA[load]!]!;
    const b = parent[loadB[load]!]!;
    const index = loads[load]!;
    const volts = re[a]! - re[b]!;
    state.re[index] = Number.isNaN(volts) ? 0 : volts;
    if (phases) {
      const across = im[a]! - im[b]!;
      state.im[index] = Number.isNaN(volts) ? 0 : across;
    }
  }
  return true;
}
