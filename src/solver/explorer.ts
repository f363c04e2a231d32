/**
 * Every order in which mechanisms may move: the general multiple winner analysis of asynchronous circuits (J. A.
 * Brzozowski and C.-J. Seger, Asynchronous Circuits, 1995). Whatever is commanded elsewhere may leave, and whatever is on
 * its way may arrive, alone or together with others, after any delay. The outcome is what the graph of reachable states
 * can't leave: one stable state, several (a race), or states that follow one another for ever.
 */
import { clustersOf } from './clusters.ts';
import { type Ending, endingsOf } from './endings.ts';
import { type Influence, influenceOf, relevantWhenTripping } from './influence.ts';
import type { Partition } from './islands.ts';
import type { Machine } from './machine.ts';
import { choicesOf, keyOf, makeMoves, movesFrom } from './moves.ts';
import { clearCandidates, moved, nothingPending, type Pending, update } from './settle.ts';
import { copyState, restoreState, type State } from './state.ts';

export interface ExploreLimits {
  /** States looked at in all. */
  readonly states: number;
  /** Steps of evaluating, each some ten nanoseconds: contacts and loads looked at, values copied. */
  readonly work?: number;
  /** What is asked where orders are more than a few; without it, what has too many is given up on. */
  readonly reasoning?: ComeTo;
}

export const EXPLORE_LIMITS = { states: 50_000, work: 50_000_000 } as const satisfies ExploreLimits;

/** What states come to, or undefined where that isn't found. They are up to date, and alike but for where mechanisms stand. */
export type ComeTo = (
  machine: Machine,
  starts: readonly State[],
  limits: ExploreLimits,
) => Ending[] | undefined;

/** Endings, and states in them, that are multiplied out; beyond, the exploration is called incomplete. */
const MOST_ENDINGS = 64;
const MOST_STATES_IN_AN_ENDING = 512;

/** Found while exploring; `more`: over a limit; `trips`: a short circuit changes what bears on what. */
type Search =
  | { readonly kind: 'found'; readonly endings: readonly Ending[] }
  | { readonly kind: 'more' | 'trips' };

const MORE: Search = { kind: 'more' };

/** Tries every order from some states within its limits. */
export class Explorer {
  private readonly machine: Machine;
  /** The first of `starts`, which are alike but for where mechanisms stand. */
  private readonly start: State;
  private readonly starts: readonly State[];
  private readonly limits: ExploreLimits;
  private scratchState: State | undefined;
  private readonly pending = nothingPending();
  private readonly workBefore: number;
  private readonly partitions: Set<Partition>;
  /** What was found from states at which the movers fall apart, by the state. */
  private readonly known = new Map<string, Search>();
  private states = 0;

  constructor(machine: Machine, starts: readonly State[], limits: ExploreLimits) {
    const start = starts[0]!;
    this.machine = machine;
    this.start = start;
    this.starts = starts;
    this.limits = limits;
    this.workBefore = machine.effort.steps;
    this.partitions = new Set([start.partition]);
  }

  /** Where moves are tried; made when the first is. */
  private get scratch(): State {
    this.scratchState ??= copyState(this.start);
    return this.scratchState;
  }

  private get spent(): boolean {
    const work = this.machine.effort.steps - this.workBefore;
    return this.states > this.limits.states || work > (this.limits.work ?? EXPLORE_LIMITS.work);
  }

  /** All endings from the start, of the mechanisms for which the order matters. */
  search(): { found: Search; group: readonly number[] } {
    const influence = influenceOf(this.machine, this.start.partition);
    const found = this.from(this.starts, influence.relevant, influence);
    return found.kind === 'trips' ? this.tripping() : { found, group: influence.relevant };
  }

  /**
   * A short circuit puts out parts of the circuit on the way, and what bears on what is different then: all mechanisms for
   * which the order matters in any of the partitions that come about are explored as one.
   */
  private tripping(): { found: Search; group: readonly number[] } {
    const relevant = new Set<number>();
    for (;;) {
      for (const partition of this.partitions)
        for (const mechanism of relevantWhenTripping(this.machine, partition)) relevant.add(mechanism);
      const group = [...relevant].sort((a, b) => a - b);
      const known = this.partitions.size;
      const found = this.from(this.starts, group, undefined);
      if (found.kind === 'more' || this.partitions.size === known) return { found, group };
    }
  }

  /** Endings from states; clusters that can't get in each other's way are explored one by one and multiplied. */
  private from(starts: readonly State[], group: readonly number[], influence: Influence | undefined): Search {
    const [start] = starts;
    if (!influence || !start || starts.length > 1) return this.graph(starts, group, influence);
    const clusters = clustersOf(this.machine, influence, start, group);
    if (clusters.length === 1) return this.graph(starts, clusters[0]!, influence);
    let endings: readonly Ending[] = [{ states: [start] }];
    for (const cluster of clusters) {
      const found = this.graph(starts, cluster, influence);
      if (found.kind !== 'found') return found;
      const product = this.product(endings, found.endings, cluster);
      if (!product) return MORE;
      endings = product;
    }
    return { kind: 'found', endings };
  }

  /** As `from`, once for each state: many ways lead to the same one. */
  private apart(from: State, group: readonly number[], influence: Influence): Search {
    const key = `${group.join()} ${keyOf(this.machine, from, this.start, influence.relevant)}`;
    const known = this.known.get(key);
    if (known) return known;
    const found = this.from([from], group, influence);
    this.known.set(key, found);
    return found;
  }

  /** The graph of the states that a group reaches, and what it comes to. */
  private graph(
    starts: readonly State[],
    group: readonly number[],
    influence: Influence | undefined,
  ): Search {
    const { machine, pending, start: base } = this;
    const byKey = new Map(starts.map((state) => [keyOf(machine, state, base, group), state]));
    const states = [...byKey.values()];
    const edges: number[][] = [];
    const left = new Set<number>();
    const numbers = new Map([...byKey.keys()].map((key, number) => [key, number]));
    const elsewhere: Ending[] = [];
    for (let number = 0; number < states.length; number++) {
      const from = states[number]!;
      const next: number[] = [];
      edges.push(next);
      const moves = movesFrom(from, group);
      if ((number > 0 || starts.length > 1) && influence && moves.length > 1) {
        const clusters = clustersOf(machine, influence, from, group);
        if (clusters.length > 1) {
          left.add(number);
          const found = this.apart(from, clusters.flat(), influence);
          if (found.kind !== 'found') return found;
          elsewhere.push(...found.endings);
          continue;
        }
      }
      const choices = choicesOf(from, moves, influence);
      if (!choices) return MORE;
      const { scratch } = this;
      for (const set of choices) {
        restoreState(scratch, from);
        makeMoves(machine, scratch, set, pending);
        machine.effort.steps += (machine.mechanisms + scratch.volts[0]!.length) >> 2;
        const key = keyOf(machine, scratch, base, group);
        let at = numbers.get(key);
        if (at === undefined) {
          if (this.spent) return MORE;
          this.states++;
          at = states.length;
          numbers.set(key, at);
          states.push(copyState(scratch));
          this.partitions.add(scratch.partition);
          if (influence && scratch.tripped.length + scratch.shorted.length > this.tripsBefore)
            return { kind: 'trips' };
        }
        next.push(at);
      }
    }
    return {
      kind: 'found',
      endings: this.distinct([...endingsOf({ states, edges, left }, group), ...elsewhere], group),
    };
  }

  private get tripsBefore(): number {
    return this.start.tripped.length + this.start.shorted.length;
  }

  private distinct(endings: readonly Ending[], group: readonly number[]): Ending[] {
    if (endings.length < 2) return [...endings];
    const seen = new Map<string, Ending>();
    for (const ending of endings) {
      const keys = ending.states.map((state) => keyOf(this.machine, state, this.start, group));
      seen.set(keys.sort().join('|'), ending);
    }
    return [...seen.values()];
  }

  /** Every ending so far with every ending of another cluster; undefined when that is too many. */
  private product(
    endings: readonly Ending[],
    others: readonly Ending[],
    cluster: readonly number[],
  ): Ending[] | undefined {
    const { machine, pending } = this;
    if (endings.length * others.length > MOST_ENDINGS) return undefined;
    const made: Ending[] = [];
    for (const { states } of endings) {
      for (const other of others) {
        if (states.length * other.states.length > MOST_STATES_IN_AN_ENDING) return undefined;
        made.push({
          states: states.flatMap((base) =>
            other.states.map((part) => {
              const merged = copyState(base);
              adopt(machine, merged, part, cluster, pending);
              return merged;
            }),
          ),
        });
      }
    }
    return made;
  }
}

/** Takes over a cluster's part of another state. */
function adopt(
  machine: Machine,
  into: State,
  from: State,
  cluster: readonly number[],
  pending: Pending,
): void {
  for (const mechanism of cluster) {
    if (into.at[mechanism] !== from.at[mechanism]) moved(machine, into, mechanism, pending);
    into.at[mechanism] = from.at[mechanism]!;
    into.goal[mechanism] = from.goal[mechanism]!;
    into.own[mechanism] = from.own[mechanism]!;
    into.heading[mechanism] = from.heading[mechanism]!;
    into.due[mechanism] = from.due[mechanism]!;
  }
  update(machine, into, pending);
  clearCandidates(machine, pending);
}
