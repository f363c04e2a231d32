/**
 * What states come to in which mechanisms are commanded elsewhere: by every order of operation, and by reasoning where these
 * are too many and somebody asks for it.
 */
import type { Ending } from './endings.ts';
import { type ComeTo, EXPLORE_LIMITS, type ExploreLimits, Explorer } from './explorer.ts';
import type { Partition } from './islands.ts';
import type { Machine } from './machine.ts';
import {
  clearCandidates,
  consider,
  moved,
  nothingPending,
  type Pending,
  settleAfter,
  update,
} from './settle.ts';
import { copyState, type State } from './state.ts';

export { type ComeTo, EXPLORE_LIMITS, type ExploreLimits } from './explorer.ts';

export interface Exploration {
  /** At least one. More than one: a race. */
  readonly endings: readonly Ending[];
  /** False when not every order could be tried within the limits; the endings are then those found by moving in waves. */
  readonly complete: boolean;
  /** What it cost; see `ExploreLimits`. */
  readonly work: number;
}

/** What is spent on orders before reasoning is tried, which costs as much as some hundred of them. */
const FEW = { states: 2_000, work: 1_000_000 };

/** By trying every order. */
export const byOrders: ComeTo = (machine, starts, limits) => {
  const { found, group } = new Explorer(machine, starts, limits).search();
  return found.kind === 'found' ? settled(machine, found.endings, group) : undefined;
};

/** By orders where they are few, else by reasoning, else by as many orders as may be tried. */
const byEither: ComeTo = (machine, starts, limits) => {
  const { states, work = EXPLORE_LIMITS.work, reasoning } = limits;
  if (!reasoning) return byOrders(machine, starts, limits);
  const few = { states: Math.min(states, FEW.states), work: Math.min(work, FEW.work) };
  return (
    byOrders(machine, starts, few) ??
    reasoning(machine, starts, limits) ??
    byOrders(machine, starts, { states, work })
  );
};

/** Endings with what follows from the group settled too. */
export const settled = (machine: Machine, endings: readonly Ending[], group: readonly number[]): Ending[] =>
  endings.map((ending) => ({
    ...ending,
    states: ending.states.map((state) => downstream(machine, state, group, ending.states.length === 1)),
  }));

/** States that can be explored as one: alike in all that neither moving mechanisms nor their coils change. */
function alike(states: readonly State[]): State[][] {
  if (states.length === 1) return [[...states]];
  const byLook = new Map<string, State[]>();
  const partitions = new Map<Partition, number>();
  for (const state of states) {
    if (!partitions.has(state.partition)) partitions.set(state.partition, partitions.size);
    const { held, due, now, tripped, shorted, whole } = state;
    const look = `${partitions.get(state.partition)} ${whole} ${now} ${tripped} ${shorted} ${held} ${due}`;
    const list = byLook.get(look);
    if (list) list.push(state);
    else byLook.set(look, [state]);
  }
  return [...byLook.values()];
}

/** Brings a state in which mechanisms are commanded elsewhere up to date; nothing moves but feeding devices. */
export function begun(machine: Machine, start: State, commanded: readonly number[] | 'all'): State {
  const pending = nothingPending();
  if (commanded === 'all') pending.all = true;
  else for (const mechanism of commanded) consider(machine, mechanism, pending);
  // Feeding devices switch everything behind them at once, before anything else can move.
  for (const feed of machine.feeds) {
    if (start.at[feed] === start.goal[feed]) continue;
    start.at[feed] = start.goal[feed]!;
    pending.all = true;
  }
  update(machine, start, pending);
  clearCandidates(machine, pending);
  return start;
}

/**
 * Explores from states in which mechanisms are commanded elsewhere (`all`: nothing is worked out yet). The given states
 * are taken over, and may be changed; the endings are settled states of their own.
 */
export function explore(
  machine: Machine,
  from: readonly State[],
  commanded: readonly number[] | 'all',
  limits: ExploreLimits = EXPLORE_LIMITS,
): Exploration {
  const endings: Ending[] = [];
  let complete = true;
  let work = 0;
  const most = limits.work ?? EXPLORE_LIMITS.work;
  for (const starts of alike(from.map((state) => begun(machine, state, commanded)))) {
    const before = machine.effort.steps;
    const found = byEither(machine, starts, { ...limits, work: most - work });
    work += machine.effort.steps - before;
    if (found) endings.push(...found);
    else {
      complete = false;
      endings.push({ states: [waves(machine, copyState(starts[0]!))] });
    }
  }
  return { endings, complete, work };
}

/** Voltages are up to date; whatever is commanded elsewhere moves. */
export function waves(machine: Machine, state: State): State {
  settleAfter(
    machine,
    state,
    Array.from({ length: machine.mechanisms }, (_, index) => index),
  );
  return state;
}

/** Settles what follows from the group. In a state that won't rest, the group itself must stay as it is. */
function downstream(machine: Machine, from: State, group: readonly number[], rests: boolean): State {
  const state = copyState(from);
  if (rests) return waves(machine, state);
  const inGroup = new Set(group);
  const pending: Pending = { ...nothingPending(), all: true };
  // What follows has no circles, so each wave settles at least one more mechanism.
  for (let wave = 0; wave <= machine.mechanisms; wave++) {
    update(machine, state, pending);
    clearCandidates(machine, pending);
    let any = false;
    for (let mechanism = 0; mechanism < machine.mechanisms; mechanism++) {
      if (inGroup.has(mechanism) || state.at[mechanism] === state.goal[mechanism]) continue;
      state.at[mechanism] = state.goal[mechanism]!;
      moved(machine, state, mechanism, pending);
      any = true;
    }
    if (!any) break;
  }
  return state;
}
