/**
 * What circuits come to whose orders are too many to be tried, where the strongly connected parts of what bears on what are
 * rings: parts that others bear on are looked at after those, and what is decided stands from then on.
 */
import { rowOf } from '../graph/index.ts';
import { type Bearings, bearingsOf, feedback, keepsState, moversIn } from './bearings.ts';
import type { Ending } from './endings.ts';
import { DRIVE, type Machine } from './machine.ts';
import { partitionFor } from './partition.ts';
import {
  isAtRest,
  isBroken,
  isOdd,
  type Ring,
  restOfBroken,
  restsOfEven,
  ringOf,
  standing,
  standingsOf,
  stateIn,
  withFixed,
} from './rings.ts';
import { clearCandidates, consider, moved, nothingPending, update } from './settle.ts';
import { copyState, type State } from './state.ts';

/** Endings that several rings are multiplied out to. */
const MOST_ENDINGS = 64;

/** Mechanisms that bear on each other in a circle, or one alone: `returns` where it bears on itself. */
interface Part {
  readonly members: readonly number[];
  readonly returns: boolean;
}

/** Works its way through the parts of one machine, from what stands by itself to what follows from it. */
class Deciding {
  /** Rings that don't come to rest in one way. */
  readonly open: Ring[] = [];
  readonly state: State;
  private readonly machine: Machine;
  private readonly start: State;
  private readonly fixed: Uint8Array;
  /** Fixed, and has not moved on the way either. */
  private readonly still: Uint8Array;
  private readonly coarse: Bearings;
  private readonly pending = nothingPending();

  constructor(machine: Machine, start: State) {
    this.machine = machine;
    this.start = start;
    this.state = copyState(start);
    this.fixed = new Uint8Array(machine.mechanisms);
    this.still = new Uint8Array(machine.mechanisms);
    this.coarse = bearingsOf(machine, start.partition);
    // What hands and the plant move gets to where it is put, whatever else happens.
    for (let mechanism = 0; mechanism < machine.mechanisms; mechanism++)
      if (machine.drive[mechanism]! >= DRIVE.act || machine.frozen[mechanism])
        this.put(mechanism, this.state.goal[mechanism]!);
    this.refresh();
  }

  private put(mechanism: number, mask: number, besides: readonly number[] = []): void {
    const { machine, state, start } = this;
    if (state.at[mechanism] !== mask) moved(machine, state, mechanism, this.pending);
    state.at[mechanism] = mask;
    this.fixed[mechanism] = 1;
    const acted = machine.drive[mechanism]! >= DRIVE.act || machine.frozen[mechanism] !== 0;
    if (start.at[mechanism] === mask && (acted || this.isQuiet(mechanism, besides)))
      this.still[mechanism] = 1;
  }

  private refresh(): void {
    update(this.machine, this.state, this.pending);
    clearCandidates(this.machine, this.pending);
  }

  /** Nothing that touches the coil, but those `besides`, moves, so it has seen nothing in between either. */
  private isQuiet(mechanism: number, besides: readonly number[] = []): boolean {
    return rowOf(this.coarse.partition.coilIslands, mechanism).every((island) =>
      moversIn(this.start.partition, island).every(
        (mover) => mover === mechanism || this.still[mover] === 1 || besides.includes(mover),
      ),
    );
  }

  /** False where it can't be decided. */
  run(): boolean {
    for (;;) {
      if (this.state.tripped.length > this.start.tripped.length || this.state.partition.whole) return false;
      if (this.state.shorted.length > this.start.shorted.length || this.state.whole) return false;
      const finer = withFixed(this.machine, this.state.at, this.fixed);
      const partition = partitionFor(finer, this.state.at, this.state.supplyOn);
      if (partition.whole) return false;
      const bearings = bearingsOf(finer, partition);
      if (bearings.shortable.includes(true)) return false;
      const parts = this.partsInOrder(bearings);
      const progress = this.decideSingles(parts, bearings);
      if (progress === undefined) return false;
      if (progress) continue;
      const rings = this.decideRings(finer, parts, bearings);
      if (rings === undefined) return false;
      if (!rings) return this.onlyFollowersLeft(parts, bearings);
    }
  }

  /** The strongly connected parts of what isn't fixed, those that bear on others first. */
  private partsInOrder(bearings: Bearings): Part[] {
    const { partOf, returns } = feedback(bearings.partition, this.machine.mechanisms);
    const parts = new Map<number, number[]>();
    partOf.forEach((number, mechanism) => {
      if (this.fixed[mechanism]) return;
      const list = parts.get(number);
      if (list) list.push(mechanism);
      else parts.set(number, [mechanism]);
    });
    return [...parts]
      .sort(([one], [other]) => other - one)
      .map(([, members]) => ({ members, returns: returns(members[0]!) }));
  }

  /** Whether everything that bears on the members from outside stands. */
  private isReady({ members }: Part, { partition }: Bearings): boolean {
    const inside = new Set(members);
    const islands = new Set(members.flatMap((member) => [...rowOf(partition.coilIslands, member)]));
    return [...islands].every((island) =>
      moversIn(partition, island).every((mover) => inside.has(mover) || this.fixed[mover] === 1),
    );
  }

  /** Fixes what follows from what is fixed; whether anything was, or undefined where it can't be said. */
  private decideSingles(parts: readonly Part[], bearings: Bearings): boolean | undefined {
    let any = false;
    for (const part of parts) {
      const mechanism = part.members[0]!;
      if (part.returns || !this.isReady(part, bearings)) continue;
      if (keepsState(this.machine, bearings, mechanism) && !this.isQuiet(mechanism)) return undefined;
      this.put(mechanism, this.state.goal[mechanism]!);
      this.refresh();
      any = true;
    }
    return any;
  }

  /** Fixes rings that rest in one way and sets the others aside; whether any was fixed, undefined where it can't be said. */
  private decideRings(finer: Machine, parts: readonly Part[], bearings: Bearings): boolean | undefined {
    const state = stateIn(finer, this.state);
    let any = false;
    this.open.length = 0;
    for (const part of parts) {
      const { members, returns } = part;
      if (!returns || !this.isReady(part, bearings)) continue;
      if (members.some((member) => keepsState(this.machine, bearings, member))) return undefined;
      const ring = ringOf(finer, state, members, bearings);
      if (!ring) return undefined;
      if (isBroken(ring)) {
        const rest = restOfBroken(ring);
        ring.members.forEach((member, index) => {
          this.put(member, rest[index]!);
        });
        any = true;
      } else if (!isOdd(ring) && isAtRest(ring, this.state)) {
        if (!members.every((member) => this.isQuiet(member, members))) return undefined;
        for (const member of members) this.put(member, this.state.at[member]!, members);
        any = true;
      } else this.open.push(ring);
    }
    this.refresh();
    return any;
  }

  /** What is behind rings that never rest must follow them and remember nothing. */
  private onlyFollowersLeft(parts: readonly Part[], bearings: Bearings): boolean {
    const inRing = new Set(this.open.flatMap(({ members }) => members));
    return parts.every(
      ({ members: [mechanism], returns }) =>
        inRing.has(mechanism!) || (!returns && !keepsState(this.machine, bearings, mechanism!)),
    );
  }
}

/** How the rings stand in one ending: each at rest in one of its ways, or going on for ever. */
type Choice = readonly (readonly number[] | undefined)[];

function choicesOf(rings: readonly Ring[]): Choice[] | undefined {
  let choices: Choice[] = [[]];
  for (const ring of rings) {
    const ways = isOdd(ring) ? [undefined] : [...restsOfEven(ring), undefined];
    choices = choices.flatMap((choice) => ways.map((way) => [...choice, way]));
    if (choices.length > MOST_ENDINGS) return undefined;
  }
  return choices;
}

/** States with the rings put where they stand; what follows from them isn't settled. */
function statesOf(machine: Machine, base: State, rings: readonly Ring[], choice: Choice): State[] {
  const series = rings.map((ring, index) => {
    const rest = choice[index];
    return rest ? [rest] : standingsOf(ring, standing(ring, base));
  });
  const count = Math.max(1, ...series.map(({ length }) => length));
  return Array.from({ length: count }, (_, number) => {
    const state = copyState(base);
    const pending = nothingPending();
    rings.forEach(({ members }, index) => {
      const at = series[index]![number % series[index]!.length]!;
      members.forEach((member, place) => {
        state.at[member] = at[place]!;
        state.heading[member] = at[place]!;
        moved(machine, state, member, pending);
        consider(machine, member, pending);
      });
    });
    update(machine, state, pending);
    clearCandidates(machine, pending);
    return state;
  });
}

/** What a circuit comes to, with the mechanisms that don't rest in it, or that it is a race between. */
export interface Decided {
  readonly endings: readonly Ending[];
  readonly group: readonly number[];
}

/** Whether two states differ only in where the members of rings stand. */
const alikeBut = (rings: ReadonlySet<number>, one: State, other: State): boolean =>
  one.at.every((mask, mechanism) => rings.has(mechanism) || mask === other.at[mechanism]);

/**
 * Endings from states that are up to date and in which mechanisms are commanded elsewhere; undefined where reasoning doesn't
 * tell. Followers of what never rests are still to be settled.
 */
export function decideRings(machine: Machine, starts: readonly State[]): Decided | undefined {
  const [start] = starts;
  if (!start || start.whole || start.partition.whole) return undefined;
  const deciding = new Deciding(machine, start);
  if (!deciding.run()) return undefined;
  const { open, state } = deciding;
  const group = open.flatMap(({ members }) => members);
  const inRings = new Set(group);
  const moving = starts.every((other) => alikeBut(inRings, start, other));
  if (starts.length > 1 && !moving && !sameEnd(machine, starts, deciding)) return undefined;
  const choices = choicesOf(open);
  if (!choices) return undefined;
  return {
    group,
    endings: choices.map((choice): Ending => {
      const states = statesOf(machine, state, open, choice);
      return choice.includes(undefined) ? { states, sampled: true } : { states };
    }),
  };
}

/** Whether all starts come to rest in the same state, or in rings that are the same. */
function sameEnd(machine: Machine, starts: readonly State[], first: Deciding): boolean {
  return starts.slice(1).every((start) => {
    const other = new Deciding(machine, start);
    if (!other.run() || other.open.length !== first.open.length) return false;
    const rings = new Set(first.open.flatMap(({ members }) => members));
    return alikeBut(rings, first.state, other.state);
  });
}
