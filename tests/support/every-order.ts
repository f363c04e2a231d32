/**
 * Every order of operation by brute force, written apart from the solver: one flat state, no islands, no groups, the
 * network solved afresh for each state, every subset of the movers tried. Slow, and simple enough to be believed.
 *
 * The model: a mechanism that is commanded elsewhere may leave, and is then between its positions with no contact closed
 * that isn't closed in both; it may arrive at any later time. When its command is withdrawn on the way it may turn back
 * or arrive and leave again. Any number may do so at the same instant. A short circuit is cleared before anything moves.
 */
import type { Circuit, Device } from '../../shared/circuit.ts';
import { contactorLimits, relayLimits } from '../../src/circuit/standards.ts';
import { nodeVolts } from './naive-network.ts';
import { isShorted } from './tangle.ts';
import { contactsOfDevice, wiringOf } from './wiring.ts';

interface Mover {
  readonly id: string;
  readonly device: Device;
  readonly coil: boolean;
}

/** One mechanism: where it is (one position or two), where it is going, what it is commanded to, and its timer. */
interface Part {
  readonly at: readonly number[];
  readonly heading: number;
  readonly goal: number;
  readonly timing: boolean;
}

export interface FlatState {
  readonly parts: readonly Part[];
  /** Fuses that have blown; whether the supply is lost. */
  readonly blown: readonly string[];
  readonly lost: boolean;
}

/** One way it can end: a steady state, or the states it goes round through. */
export type FlatEnding = readonly FlatState[];

export class TooMany extends Error {}

export class EveryOrder {
  readonly movers: readonly Mover[];
  private readonly circuit: Circuit;
  private readonly fuses: readonly string[];
  private readonly known = new Map<string, { volts: ReadonlyMap<string, number>; short: boolean }>();
  private readonly most: number;

  constructor(circuit: Circuit, most: number) {
    this.circuit = circuit;
    this.most = most;
    this.fuses = circuit.devices.flatMap(({ kind, name }) => (kind === 'fuse' ? [name] : []));
    this.movers = circuit.devices.flatMap((device): Mover[] => {
      if (device.kind === 'fuse' || contactsOfDevice(device).length === 0) return [];
      const coil = 'rating' in device && device.kind !== 'lamp';
      return [{ id: device.name, device, coil }];
    });
  }

  /** Everything at rest and nothing worked out yet. */
  private atRest(): FlatState {
    return {
      parts: this.movers.map(() => ({ at: [0], heading: 0, goal: 0, timing: false })),
      blown: [],
      lost: false,
    };
  }

  private network(state: FlatState): { volts: ReadonlyMap<string, number>; short: boolean } {
    const key = `${state.parts.map(({ at }) => at.join('+')).join()} ${state.blown.join('+')} ${state.lost}`;
    const before = this.known.get(key);
    if (before) return before;
    const standing = new Map(this.movers.map(({ id }, index) => [id, state.parts[index]!.at] as const));
    for (const fuse of this.fuses) standing.set(fuse, [state.blown.includes(fuse) ? 1 : 0]);
    const wiring = wiringOf(this.circuit, [], standing);
    const live = state.lost ? { ...wiring, sources: [] } : wiring;
    const short = isShorted(live);
    const found = { short, volts: short ? new Map<string, number>() : nodeVolts(live) };
    this.known.set(key, found);
    return found;
  }

  /** The fuse that clears a short circuit blows; if none does alone, the first that is whole; else the supply is lost. */
  private cleared(state: FlatState): FlatState {
    if (!this.network(state).short) return state;
    const without = this.fuses
      .filter((fuse) => !state.blown.includes(fuse))
      .map((fuse) => ({ ...state, blown: [...state.blown, fuse].sort() }));
    const clear = without.find((next) => !this.network(next).short);
    if (clear) return clear;
    const shortLeft = without[0];
    // Where even all fuses out don't clear it, none of them is on the way and the supply is lost at once.
    const allOut = { ...state, blown: [...this.fuses] };
    if (!shortLeft || this.network(allOut).short) return this.cleared({ ...state, lost: true });
    return this.cleared(shortLeft);
  }

  /** Commands follow the coils' voltages. */
  private settled(state: FlatState): FlatState {
    const now = this.cleared(state);
    const { volts } = this.network(now);
    const across = (device: string, from: string, to: string): number =>
      Math.abs(volts.get(`${device}:${from}`)! - volts.get(`${device}:${to}`)!);
    const parts = now.parts.map((part, index): Part => {
      const { device, coil } = this.movers[index]!;
      if (!coil || !('rating' in device) || device.rating === undefined) return part;
      const { volts: rated, current } = device.rating;
      const limits = device.kind === 'contactor' ? contactorLimits(current) : relayLimits(current);
      const band = (from: string, to: string): number => {
        const share = across(device.name, from, to) / rated;
        return share >= limits.operate - 1e-6 ? 1 : share <= limits.release + 1e-6 ? -1 : 0;
      };
      const pull = band('A1', 'A2');
      switch (device.kind) {
        case 'latching-relay': {
          const back = band('B1', 'B2');
          if (pull > 0 && back <= 0) return { ...part, goal: 1 };
          if (back > 0 && pull <= 0) return { ...part, goal: 0 };
          return part;
        }
        case 'on-delay':
          // Time stands still, so it never gets there.
          if (pull < 0) return { ...part, goal: 0, timing: false };
          return pull > 0 ? { ...part, timing: true } : part;
        case 'supplied-off-delay': {
          if (pull < 0) return { ...part, goal: 0, timing: false };
          if (pull === 0 && part.goal === 0) return part;
          const signal = band('B1', 'A2');
          if (signal > 0) return { ...part, goal: 1, timing: false };
          return signal < 0 && part.goal === 1 ? { ...part, timing: true } : part;
        }
        case 'off-delay':
          if (pull > 0) return { ...part, goal: 1, timing: false };
          return pull < 0 && part.goal === 1 ? { ...part, timing: true } : part;
        case 'flasher':
          if (pull < 0) return { ...part, goal: 0, timing: false };
          return pull > 0 && !part.timing ? { ...part, goal: 1, timing: true } : part;
        default:
          return pull === 0 ? part : { ...part, goal: pull > 0 ? 1 : 0 };
      }
    });
    return { ...now, parts };
  }

  /** Where one mechanism can be next. */
  private nexts({ at, heading, goal, timing }: Part): Part[] {
    if (at.length === 1) {
      return at[0] === goal ? [] : [{ at: [at[0]!, goal], heading: goal, goal, timing }];
    }
    return [...new Set([goal, heading])].map((position) => ({
      at: [position],
      heading: position,
      goal,
      timing,
    }));
  }

  private successors(state: FlatState): FlatState[] {
    // One entry a mechanism: staying as it is, or each way on.
    let found: Part[][] = [[]];
    for (const part of state.parts) {
      const ways = [part, ...this.nexts(part)];
      found = found.flatMap((parts) => ways.map((way) => [...parts, way]));
    }
    return found.slice(1).map((parts) => this.settled({ ...state, parts }));
  }

  private key({ parts, blown, lost }: FlatState): string {
    const text = parts.map(
      ({ at, heading, goal, timing }) =>
        `${[...at].sort().join('+')}${at.length > 1 ? heading : ''}>${goal}${timing ? 't' : ''}`,
    );
    return `${text.join(' ')} ${blown.join('+')} ${lost}`;
  }

  /** The endings reached from a state in which commands may have changed. */
  private explore(from: FlatState): FlatEnding[] {
    const start = this.settled(from);
    const states = [start];
    const edges: number[][] = [];
    const numbers = new Map([[this.key(start), 0]]);
    for (let number = 0; number < states.length; number++) {
      edges.push(
        this.successors(states[number]!).map((next) => {
          const key = this.key(next);
          const before = numbers.get(key);
          if (before !== undefined) return before;
          if (states.length >= this.most) throw new TooMany();
          numbers.set(key, states.length);
          states.push(next);
          return states.length - 1;
        }),
      );
    }
    return componentsOf(edges)
      .filter((members) => this.lasts(members, states, edges))
      .map((members) => members.map((member) => states[member]!));
  }

  /** Whether a component can be where it ends: nothing leads out, or it can be gone round in for ever. */
  private lasts(
    members: readonly number[],
    states: readonly FlatState[],
    edges: readonly number[][],
  ): boolean {
    const inside = new Set(members);
    if (members.every((member) => edges[member]!.every((next) => inside.has(next)))) return true;
    if (members.length === 1) return false;
    // Going round for ever is possible unless some mechanism would have to be on one move all the time.
    return !this.movers.some((_, mover) => {
      const moves = members.map((member) => {
        const { at, goal } = states[member]!.parts[mover]!;
        return at.length === 1 && at[0] === goal ? 'rests' : `${[...at].sort().join('+')}>${goal}`;
      });
      return moves[0] !== 'rests' && moves.every((move) => move === moves[0]);
    });
  }

  private distinct(endings: readonly FlatEnding[]): FlatEnding[] {
    const byKey = new Map(
      endings.map(
        (ending) =>
          [
            ending
              .map((state) => this.key(state))
              .sort()
              .join('|'),
            ending,
          ] as const,
      ),
    );
    return [...byKey.values()];
  }

  beginning(): FlatEnding[] {
    return this.distinct(this.explore(this.atRest()));
  }

  /** A hand-operated device put into a position, from every state the circuit may be in. */
  after(endings: readonly FlatEnding[], device: string, position: number): FlatEnding[] {
    const mover = this.movers.findIndex(({ id }) => id === device);
    return this.distinct(
      endings.flat().flatMap((state) =>
        this.explore({
          ...state,
          parts: state.parts.map((part, index) => (index === mover ? { ...part, goal: position } : part)),
        }),
      ),
    );
  }
}

/** Strongly connected components: two passes of depth-first search (Kosaraju). */
function componentsOf(edges: readonly (readonly number[])[]): number[][] {
  const back: number[][] = edges.map(() => []);
  edges.forEach((nexts, from) => {
    for (const to of nexts) back[to]!.push(from);
  });
  const visit = (start: number, next: (vertex: number) => readonly number[], seen: Set<number>): number[] => {
    const order: number[] = [];
    const stack: [number, number][] = [[start, 0]];
    seen.add(start);
    while (stack.length > 0) {
      const top = stack.at(-1)!;
      const to = next(top[0])[top[1]++];
      if (to === undefined) {
        order.push(top[0]);
        stack.pop();
      } else if (!seen.has(to)) {
        seen.add(to);
        stack.push([to, 0]);
      }
    }
    return order;
  };
  const forward = new Set<number>();
  const order = edges.flatMap((_, vertex) =>
    forward.has(vertex) ? [] : visit(vertex, (at) => edges[at]!, forward),
  );
  const seen = new Set<number>();
  return order
    .reverse()
    .flatMap((vertex) => (seen.has(vertex) ? [] : [visit(vertex, (at) => back[at]!, seen)]));
}
