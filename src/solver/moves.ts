/** One step of exploring: which mechanisms can move how, and the state after some of them have. */
import { JoinedSets } from '../graph/index.ts';
import { type Influence, varies } from './influence.ts';
import type { Machine } from './machine.ts';
import { clearCandidates, moved, type Pending, update } from './settle.ts';
import type { State } from './state.ts';

/** A mechanism and the mask it takes. */
export type Move = readonly [mechanism: number, mask: number];

/** Up to this many movers that bear on each other every subset is tried at once. */
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

/**
 * The sets of moves to try at once; undefined when they are too many. Moves that don't affect each other commute: made at
 * once they come to what they come to one after the other, so only those that do are tried together (partial-order
 * reduction: A. Mazurkiewicz, 1977; P. Godefroid, Partial-Order Methods for the Verification of Concurrent Systems, 1996).
 */
export function choicesOf(
  state: State,
  moves: readonly Move[],
  influence: Influence | undefined,
): (readonly Move[])[] | undefined {
  const [first] = moves;
  if (first === undefined) return [];
  if (moves.length === 1) return [[first]];
  const byMover = new Map<number, Move[]>();
  for (const move of moves) {
    const list = byMover.get(move[0]);
    if (list) list.push(move);
    else byMover.set(move[0], [move]);
  }
  const classes = influence && !influence.whole ? apart(state, byMover, influence) : [[...byMover.values()]];
  if (classes.some((movers) => movers.length > SUBSETS_UP_TO)) return undefined;
  return classes.flatMap((movers) => [...everySubset(movers)]);
}

/** The movers in classes that don't affect each other in what they may do next. */
function apart(
  state: State,
  byMover: ReadonlyMap<number, readonly Move[]>,
  { touches, coilsIn }: Influence,
): (readonly Move[])[][] {
  // Mechanisms by their number; islands of which the voltages change with a move below nothing.
  const groups = new JoinedSets<number>();
  const changed = new Set<number>();
  for (const [mechanism, moves] of byMover) {
    const masks = [state.at[mechanism]!, ...moves.map(([, mask]) => mask)];
    for (const touch of touches[mechanism]!) {
      if (!varies(touch, masks)) continue;
      groups.join(mechanism, -1 - touch.island);
      if (changed.has(touch.island)) continue;
      changed.add(touch.island);
      for (const coil of coilsIn[touch.island]!) groups.join(coil, mechanism);
    }
  }
  const classes = new Map<number, (readonly Move[])[]>();
  for (const [mechanism, moves] of byMover) {
    const list = classes.get(groups.find(mechanism));
    if (list) list.push(moves);
    else classes.set(groups.find(mechanism), [moves]);
  }
  return [...classes.values()];
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
    const own = 32 - Math.clz32(state.own[mechanism]!);
    key += String.fromCharCode(at | (goal << 6) | (timer << 9) | (own << 11));
    if ((at & (at - 1)) !== 0) key += String.fromCharCode(state.heading[mechanism]!);
  }
  for (const feed of machine.feeds) key += String.fromCharCode(state.at[feed]!);
  for (const on of state.supplyOn) key += on;
  return key;
}
