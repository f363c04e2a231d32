/**
 * Every order in which mechanisms may move: the general multiple winner analysis of asynchronous circuits (J. A.
 * Brzozowski and C.-J. Seger, Asynchronous Circuits, 1995). Whatever is commanded elsewhere may leave, and whatever is on
 * its way may arrive, alone or together with others, after any delay. The outcome is what the graph of reachable states
 * can't leave: one stable state, several (a race), or states that follow one another for ever.
 */
import { influenceOf } from './influence.ts';
import type { Machine } from './machine.ts';
import { clearCandidates, moved, nothingPending, type Pending, settleAfter, update } from './settle.ts';
import { copyState, type State } from './state.ts';
import { strongComponents } from './strong-components.ts';

/** One way it can end: a state that rests, or the states that it keeps going through. */
export interface Ending {
  readonly states: readonly State[];
}

export interface Exploration {
  /** At least one. More than one: a race. */
  readonly endings: readonly Ending[];
  /** False when there were more orders than `limit` states; the endings are then those found by moving in waves. */
  readonly complete: boolean;
}

export interface ExploreLimits {
  /** States explored in one group of mechanisms. */
  readonly states: number;
}

export const EXPLORE_LIMITS: ExploreLimits = { states: 20_000 };

/** Up to this many movers every subset is tried at once; beyond, single ones and all together. */
const SUBSETS_UP_TO = 5;

/** Where each mechanism of the group can go next from this state. */
function options(state: State, group: readonly number[]): [mechanism: number, mask: number][] {
  const found: [number, number][] = [];
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

/** The sets of moves to try: any subset of few movers, single ones and all at once of many. */
function* choices(moves: readonly [number, number][]): Generator<readonly [number, number][]> {
  const movers = [...new Set(moves.map(([mechanism]) => mechanism))];
  if (movers.length > SUBSETS_UP_TO) {
    for (const move of moves) yield [move];
    yield movers.map((mechanism) => moves.find(([other]) => other === mechanism)!);
    return;
  }
  const ways = movers.map((mechanism) => [undefined, ...moves.filter(([other]) => other === mechanism)]);
  const total = ways.reduce((product, list) => product * list.length, 1);
  for (let number = 1; number < total; number++) {
    const chosen: [number, number][] = [];
    let rest = number;
    for (const list of ways) {
      const move = list[rest % list.length];
      rest = Math.floor(rest / list.length);
      if (move) chosen.push(move);
    }
    yield chosen;
  }
}

function apply(machine: Machine, state: State, moves: readonly [number, number][], pending: Pending): void {
  for (const [mechanism, mask] of moves) {
    const travelling = (mask & (mask - 1)) !== 0;
    if (travelling) state.heading[mechanism] = state.goal[mechanism]!;
    state.at[mechanism] = mask;
    moved(machine, state, mechanism, pending);
  }
  update(machine, state, pending);
  clearCandidates(machine, pending);
}

/** What tells two states of one group apart; feeding devices and supplies are in it because a short may open them. */
function keyOf(machine: Machine, state: State, group: readonly number[]): string {
  let key = '';
  for (const mechanism of group) {
    key += String.fromCharCode(
      state.at[mechanism]! + 1,
      state.goal[mechanism]! + 1,
      state.due[mechanism] === Infinity ? 1 : 2,
    );
    const at = state.at[mechanism]!;
    if ((at & (at - 1)) !== 0) key += String.fromCharCode(state.heading[mechanism]! + 1);
  }
  for (const feed of machine.feeds) key += String.fromCharCode(state.at[feed]! + 1);
  for (const on of state.supplyOn) key += on;
  return key;
}

interface Graph {
  readonly states: State[];
  readonly edges: number[][];
}

/** All states that a group reaches from one; undefined when there are more than `limit`. */
function reach(machine: Machine, start: State, group: readonly number[], limit: number): Graph | undefined {
  const states = [start];
  const edges: number[][] = [[]];
  const numbers = new Map([[keyOf(machine, start, group), 0]]);
  const pending = nothingPending();
  for (let number = 0; number < states.length; number++) {
    const from = states[number]!;
    for (const moves of choices(options(from, group))) {
      const to = copyState(from);
      apply(machine, to, moves, pending);
      const key = keyOf(machine, to, group);
      let at = numbers.get(key);
      if (at === undefined) {
        if (states.length >= limit) return undefined;
        at = states.length;
        numbers.set(key, at);
        states.push(to);
        edges.push([]);
      }
      edges[number]!.push(at);
    }
  }
  return { states, edges };
}

/**
 * The endings of a graph: its final components, and cycles that could go on for ever although a way leads out. A cycle
 * passes away (is transient) when some mechanism is moving in the same way all through it: it will get there some day.
 */
function endingsOf({ states, edges }: Graph, group: readonly number[]): Ending[] {
  const component = strongComponents(states.length, (vertex) => edges[vertex]!);
  const members = new Map<number, number[]>();
  component.forEach((number, vertex) => {
    const list = members.get(number);
    if (list) list.push(vertex);
    else members.set(number, [vertex]);
  });
  const endings: Ending[] = [];
  for (const [number, vertices] of members) {
    const final = vertices.every((vertex) => edges[vertex]!.every((to) => component[to] === number));
    if (
      !final &&
      (vertices.length === 1 ||
        passesAway(
          vertices.map((vertex) => states[vertex]!),
          group,
        ))
    )
      continue;
    endings.push({ states: vertices.map((vertex) => states[vertex]!) });
  }
  return endings;
}

const passesAway = (states: readonly State[], group: readonly number[]): boolean =>
  group.some((mechanism) => {
    const { at, goal } = states[0]!;
    return (
      at[mechanism] !== goal[mechanism] &&
      states.every(
        (state) => state.at[mechanism] === at[mechanism] && state.goal[mechanism] === goal[mechanism],
      )
    );
  });

/** Takes over a group's part of another state. */
function adopt(machine: Machine, into: State, from: State, group: readonly number[], pending: Pending): void {
  for (const mechanism of [...group, ...machine.feeds]) {
    if (into.at[mechanism] !== from.at[mechanism]) moved(machine, into, mechanism, pending);
    into.at[mechanism] = from.at[mechanism]!;
    into.goal[mechanism] = from.goal[mechanism]!;
    into.heading[mechanism] = from.heading[mechanism]!;
    into.due[mechanism] = from.due[mechanism]!;
  }
  from.supplyOn.forEach((on, index) => {
    if (into.supplyOn[index] !== on) pending.all = true;
    into.supplyOn[index] = on;
  });
  for (const [mine, theirs] of [
    [into.tripped, from.tripped],
    [into.shorted, from.shorted],
  ] as const) {
    for (const item of theirs) if (!mine.includes(item)) mine.push(item);
  }
}

/**
 * Explores from a state in which mechanisms are commanded elsewhere (`all`: nothing is worked out yet). The given state
 * isn't changed; the endings are settled states of their own.
 */
export function explore(
  machine: Machine,
  from: State,
  commanded: readonly number[] | 'all',
  limits: ExploreLimits = EXPLORE_LIMITS,
): Exploration {
  const start = copyState(from);
  const pending = nothingPending();
  if (commanded === 'all') pending.all = true;
  // Feeding devices switch everything behind them at once, before anything else can move.
  for (const feed of machine.feeds) {
    if (start.at[feed] === start.goal[feed]) continue;
    start.at[feed] = start.goal[feed]!;
    pending.all = true;
  }
  update(machine, start, pending);
  clearCandidates(machine, pending);
  const { groups } = influenceOf(machine, start.partition);
  const tripsBefore = start.tripped.length + start.shorted.length;
  let endings: State[][] = [[start]];
  for (const group of groups) {
    if (group.every((mechanism) => start.at[mechanism] === start.goal[mechanism])) continue;
    const graph = reach(machine, start, group, limits.states);
    if (!graph) return givenUp(machine, start);
    const found = endingsOf(graph, group);
    const trips = graph.states.some(({ tripped, shorted }) => tripped.length + shorted.length > tripsBefore);
    if (trips) return exploreTripping(machine, start, limits);
    // Every ending so far with every ending of this group: the groups don't bear on one another.
    endings = endings.flatMap((so_far) =>
      found.map((ending) =>
        so_far.flatMap((base) =>
          ending.states.map((part) => {
            const merged = copyState(base);
            adopt(machine, merged, part, group, pending);
            update(machine, merged, pending);
            clearCandidates(machine, pending);
            return merged;
          }),
        ),
      ),
    );
    if (endings.length > 64 || endings.some((states) => states.length > 512)) {
      return givenUp(machine, start);
    }
  }
  const settled = endings.map((states) => ({
    states: states.map((state) => downstream(machine, state, groups, states.length === 1)),
  }));
  return { endings: settled, complete: true };
}

/**
 * A short circuit has put out parts of the circuit, and what bears on what is different then: all mechanisms for which the
 * order matters in any of the partitions that come about are explored as one group.
 */
function exploreTripping(machine: Machine, start: State, limits: ExploreLimits): Exploration {
  const partitions = new Set([start.partition]);
  const relevant = new Set<number>();
  for (;;) {
    for (const partition of partitions)
      for (const mechanism of influenceOf(machine, partition).groups.flat()) relevant.add(mechanism);
    const group = [...relevant].sort((a, b) => a - b);
    const graph = reach(machine, start, group, limits.states);
    if (!graph) return givenUp(machine, start);
    const known = partitions.size;
    for (const { partition } of graph.states) partitions.add(partition);
    if (partitions.size > known) continue;
    const endings = endingsOf(graph, group).map(({ states }) => ({
      states: states.map((state) => downstream(machine, state, [group], states.length === 1)),
    }));
    return { endings, complete: true };
  }
}

/** What moving in waves gives, where not every order could be tried. */
const givenUp = (machine: Machine, start: State): Exploration => ({
  endings: [{ states: [waves(machine, copyState(start))] }],
  complete: false,
});

/** Voltages are up to date; whatever is commanded elsewhere moves. */
function waves(machine: Machine, state: State): State {
  settleAfter(
    machine,
    state,
    Array.from({ length: machine.mechanisms }, (_, index) => index),
  );
  return state;
}

/** Settles what no group holds. In a state that won't rest, the group itself must stay as it is. */
function downstream(
  machine: Machine,
  state: State,
  groups: readonly (readonly number[])[],
  rests: boolean,
): State {
  if (rests) return waves(machine, state);
  const inGroup = new Set(groups.flat());
  const pending: Pending = { ...nothingPending(), all: true };
  for (;;) {
    update(machine, state, pending);
    clearCandidates(machine, pending);
    let any = false;
    for (let mechanism = 0; mechanism < machine.mechanisms; mechanism++) {
      if (inGroup.has(mechanism) || state.at[mechanism] === state.goal[mechanism]) continue;
      state.at[mechanism] = state.goal[mechanism]!;
      moved(machine, state, mechanism, pending);
      any = true;
    }
    if (!any) return state;
  }
}
