/**
 * Rings of relays, of any size, decided by reasoning instead of by trying orders. Once everything in front of it stands, each
 * relay of a ring follows the one before it or does the opposite, and a place where it doesn't yet is a token: moving a
 * relay hands it on. Tokens vanish only in pairs, when one catches up with the next. So a ring with an odd number of opposites
 * has always one left and never rests, and one with an even number comes to rest in either of two ways, or chases its
 * tokens for ever, as it happens: a race. (Sequences of this kind: J. A. Brzozowski and C.-J. Seger, Asynchronous Circuits,
 * 1995; rings of inverters there.)
 */
import { type Bearings, bornBy } from './bearings.ts';
import { band } from './coils.ts';
import { type Machine, machineOf } from './machine.ts';
import { partitionFor } from './partition.ts';
import type { Plan } from './plan.ts';
import { clearCandidates, moved, nothingPending, update } from './settle.ts';
import { type State, startState } from './state.ts';

const REST = 1;
const ON_ITS_WAY = 3;
const OPERATED = 2;

/** One ring, its relays in the order in which they bear on each other. */
export interface Ring {
  readonly members: readonly number[];
  /** Of each whether it does the opposite of the one before it; undefined where that one makes no difference. */
  readonly opposite: readonly (boolean | undefined)[];
  /** Of a relay to which the one before makes no difference, where it stands. */
  readonly constant: readonly (number | undefined)[];
}

/** The machine with some mechanisms left where they stand: what only they part is one conductor, so islands are smaller. */
export function withFixed(machine: Machine, at: Uint8Array, fixed: Uint8Array): Machine {
  const { plan } = machine;
  const switches = plan.switches.map((part, index): Plan['switches'][number] => {
    const { mechanism } = part;
    if (mechanism < 0 || !fixed[mechanism]) return part;
    const closed = (at[mechanism]! & ~machine.closedMask[index]!) === 0;
    return { ...part, mechanism: -1, fixed: closed ? 'closed' : 'open' };
  });
  return machineOf({ ...plan, switches });
}

/** A state of such a machine with everything where it stands in another. */
export function stateIn(machine: Machine, from: State): State {
  const state = startState(machine, 'live');
  for (const key of ['at', 'goal', 'own', 'heading', 'held', 'supplyOn', 'due'] as const)
    state[key].set(from[key] as never);
  state.now = from.now;
  state.partition = partitionFor(machine, state.at, state.supplyOn);
  const pending = { ...nothingPending(), all: true };
  update(machine, state, pending);
  clearCandidates(machine, pending);
  return state;
}

/** The members of a strongly connected part as a ring; undefined when it is none. */
function inOrder(members: readonly number[], bearings: Bearings): number[] | undefined {
  const inside = new Set(members);
  const after = new Map<number, number>();
  for (const member of members) {
    for (const other of bornBy(bearings, member)) {
      if (!inside.has(other)) continue;
      if ((after.get(member) ?? other) !== other) return undefined;
      after.set(member, other);
    }
  }
  const order = [members[0]!];
  for (let at = after.get(members[0]!)!; at !== members[0]; at = after.get(at)!) {
    if (order.length === members.length) return undefined;
    order.push(at);
  }
  return order.length === members.length ? order : undefined;
}

/**
 * Reads a ring off a strongly connected part of the machine, everything outside it standing as in `state`; undefined when it
 * is no ring, or some relay of it is not decided by the one before (a coil between its limits, a pulse on the way).
 */
export function ringOf(
  machine: Machine,
  state: State,
  part: readonly number[],
  bearings: Bearings,
): Ring | undefined {
  const members = inOrder(part, bearings);
  if (!members) return undefined;
  const opposite: (boolean | undefined)[] = [];
  const constant: (number | undefined)[] = [];
  const pending = nothingPending();
  for (const [index, member] of members.entries()) {
    const before = members.at(index - 1)!;
    const stood = state.at[before]!;
    const bandAt = (mask: number): -1 | 0 | 1 => {
      state.at[before] = mask;
      moved(machine, state, before, pending);
      update(machine, state, pending);
      clearCandidates(machine, pending);
      return band(machine, state, machine.coilOf[member]!);
    };
    const [rest, way, operated] = [REST, ON_ITS_WAY, OPERATED].map(bandAt);
    bandAt(stood);
    if (rest === 0 || way === 0 || operated === 0 || state.tripped.length > 0) return undefined;
    if (rest === operated) {
      if (way !== rest) return undefined;
      opposite.push(undefined);
      constant.push(state.held[member] || rest! > 0 ? OPERATED : REST);
    } else if (state.held[member]) {
      opposite.push(undefined);
      constant.push(OPERATED);
    } else {
      opposite.push(rest! > 0);
      constant.push(undefined);
    }
  }
  return { members, opposite, constant };
}

const turned = (mask: number): number => (mask === REST ? OPERATED : REST);

/** Where a member has to stand for the one before it to be followed. */
const follows = ({ opposite, constant }: Ring, index: number, before: number): number =>
  constant[index] ?? (opposite[index] ? turned(before) : before);

/** Whether some relay doesn't depend on the one before it, so that everything follows from it. */
export const isBroken = ({ opposite }: Ring): boolean => opposite.includes(undefined);

/** An odd number of opposites: it never rests. */
export const isOdd = ({ opposite }: Ring): boolean => opposite.filter(Boolean).length % 2 === 1;

/** Where the relays stand when each follows the one before it, the first one's place given. */
function chain(ring: Ring, from: number, first: number): number[] {
  const size = ring.members.length;
  const at = new Array<number>(size);
  at[from] = first;
  for (let step = 1; step < size; step++) {
    const index = (from + step) % size;
    at[index] = follows(ring, index, at[(index + size - 1) % size]!);
  }
  return at;
}

/** Where a broken ring comes to rest. */
export const restOfBroken = (ring: Ring): number[] => {
  const from = ring.opposite.indexOf(undefined);
  return chain(ring, from, ring.constant[from]!);
};

/** The two ways in which an even ring rests. */
export const restsOfEven = (ring: Ring): [number[], number[]] => [
  chain(ring, 0, REST),
  chain(ring, 0, OPERATED),
];

/** Steps of the ring looked at beyond those in which each relay is seen in both its positions. */
const STEPS = 12;

/**
 * Some of the standings that a ring that doesn't rest goes through, each relay seen in both its positions: with its last
 * token, or the last two, half-way round; and those that follow on `start`, some of the relays moving at once.
 */
export function standingsOf(ring: Ring, start: readonly number[]): number[][] {
  const size = ring.members.length;
  const [one, other] = restsOfEven(ring);
  const half = (at: readonly number[]): number[] =>
    at.map((mask, index) => (index < size >> 1 ? turned(mask) : mask));
  const found = [half(one), half(other), ...(isOdd(ring) ? [one, other] : [])];
  let at = [...start];
  let chance = 0x9e3779b9;
  for (let step = 0; step < STEPS; step++) {
    const waiting = at.flatMap((mask, index) =>
      mask === follows(ring, index, at[(index + size - 1) % size]!) ? [] : [index],
    );
    if (waiting.length === 0) break;
    found.push(at);
    at = [...at];
    for (const index of waiting) {
      chance = Math.imul(chance ^ (chance >>> 15), 0x85ebca6b) + index;
      if (step === 0 || chance & 4) at[index] = turned(at[index]!);
    }
  }
  return found;
}

/** Where the members of a ring stand, those on their way where they set out from. */
export const standing = ({ members }: Ring, { at, heading }: State): number[] =>
  members.map((member) => {
    const mask = at[member]!;
    return mask === REST || mask === OPERATED ? mask : turned(heading[member]!);
  });

/** Whether each member rests where the one before it wants it. */
export const isAtRest = (ring: Ring, { at }: State): boolean =>
  ring.members.every(
    (member, index) => at[member] === follows(ring, index, at[ring.members.at(index - 1)!]!),
  );
