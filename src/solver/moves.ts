/** One step of exploring: which mechanisms can move how, and the state after some of them have. */
import type { Machine } from './machine.ts';
import { clearCandidates, moved, type Pending, update } from './settle.ts';
import type { State } from './state.ts';

/** A mechanism and the mask it takes. */
export type Move = readonly [mechanism: number, mask: number];

/** Up to this many movers every subset is tried at once; beyond, single ones, pairs and all together. */
const SUBSETS_UP_TO = 8;

/** Where each mechanism of the group can go next from this state. */
export function movesFrom(state: State, group: readonly number[]): Move[] {
  const found: Move[] = [];
  for (const mechanism of group) {
    const at = state.at[mechanism]!;
    const goal = state.goal[mechanism]!;
    const travelling = (at & (at - 1)) !== 0;
    if (!travelling) {
      if (at !== goal) found.push([mechanism, at | goal]);
      continue;
    }
    found.push([mechanism, goal]);
    // Its command has been withdrawn on the way: it may turn back, or arrive by its own momentum.
    const heading = state.heading[mechanism]!;
    if (heading !== goal) found.push([mechanism, heading]);
  }
  return found;
}

/** Sets of moves to try, and whether they are all there are. */
export interface Choices {
  readonly sets: Iterable<readonly Move[]>;
  readonly all: boolean;
}

export function choicesOf(moves: readonly Move[]): Choices {
  const [first] = moves;
  if (first === undefined) return { sets: [], all: true };
  if (moves.length === 1) return { sets: [[first]], all: true };
  const byMover = new Map<number, Move[]>();
  for (const move of moves) {
    const list = byMover.get(move[0]);
    if (list) list.push(move);
    else byMover.set(move[0], [move]);
  }
  const movers = [...byMover.values()];
  return movers.length <= SUBSETS_UP_TO
    ? { sets: everySubset(movers), all: true }
    : { sets: someSubsets(movers), all: false };
}

function* everySubset(movers: readonly (readonly Move[])[]): Generator<readonly Move[]> {
  const total = movers.reduce((product, ways) => product * (ways.length + 1), 1);
  for (let number = 1; number < total; number++) {
    const chosen: Move[] = [];
    let rest = number;
    for (const ways of movers) {
      const way = rest % (ways.length + 1);
      rest = Math.floor(rest / (ways.length + 1));
      if (way > 0) chosen.push(ways[way - 1]!);
    }
    yield chosen;
  }
}

function* someSubsets(movers: readonly (readonly Move[])[]): Generator<readonly Move[]> {
  yield movers.map(([first]) => first!);
  for (const ways of movers) for (const move of ways) yield [move];
  for (const [index, ways] of movers.entries())
    for (const others of movers.slice(index + 1))
      for (const one of ways) for (const other of others) yield [one, other];
}

/** Makes the moves and brings voltages and commands up to date. */
export function makeMoves(machine: Machine, state: State, moves: readonly Move[], pending: Pending): void {
  for (const [mechanism, mask] of moves) {
    const travelling = (mask & (mask - 1)) !== 0;
    if (travelling) state.heading[mechanism] = state.goal[mechanism]!;
    state.at[mechanism] = mask;
    moved(machine, state, mechanism, pending);
  }
  update(machine, state, pending);
  clearCandidates(machine, pending);
}

/**
 * What tells two states of one group apart. A timer runs out when it did in `base`, or has been started anew since;
 * feeding devices and supplies are in it because a short circuit may open them.
 */
export function keyOf(machine: Machine, state: State, base: State, group: readonly number[]): string {
  let key = '';
  for (const mechanism of group) {
    const at = state.at[mechanism]!;
    const due = state.due[mechanism]!;
    // Positions are six bits, so all of it goes into one code unit, and the direction of a traveller into another.
    const timer = due === Infinity ? 0 : due === base.due[mechanism] ? 1 : 2;
    const goal = 32 - Math.clz32(state.goal[mechanism]!);
    key += String.fromCharCode(at | (goal << 6) | (timer << 9));
    if ((at & (at - 1)) !== 0) key += String.fromCharCode(state.heading[mechanism]!);
  }
  for (const feed of machine.feeds) key += String.fromCharCode(state.at[feed]!);
  for (const on of state.supplyOn) key += on;
  return key;
}
