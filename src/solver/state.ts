import { copyVolts, newVolts, type Volts } from './axes.ts';
import type { Partition } from './islands.ts';
import type { Machine } from './machine.ts';
import { partitionFor } from './partition.ts';
import type { PlanMechanism } from './plan.ts';

/** Where everything stands. Mutable, owned by whoever runs the machine; `copyState` makes an independent one. */
export interface State {
  /** Position mask of each mechanism; see machine.ts. */
  readonly at: Uint8Array;
  /** Position each mechanism is commanded to, as a bit. */
  readonly goal: Uint8Array;
  /** Of coil-driven mechanisms where coil and timer would have it, as a bit; `goal` but for one held by hand. */
  readonly own: Uint8Array;
  /** Where a mechanism on its way set out for, as a bit; only exploring and the timed run look at it. */
  readonly heading: Uint8Array;
  /** Held operated by hand, by the scenario. */
  readonly held: Uint8Array;
  readonly supplyOn: Uint8Array;
  /** Volts across each load from its `from` to its `to` terminal, along each axis of the machine. */
  readonly volts: Volts;
  /** When each timer is due, in seconds; Infinity when none runs. */
  readonly due: Float64Array;
  /** Seconds that each timer has left after an interruption, or 0; only where one adds up. */
  readonly left: Float64Array | undefined;
  /** Seconds since the scenario began. */
  now: number;
  /** How often timers have fired; see `MOST_FIRINGS`. */
  firings: number;
  /** Some mechanism was left commanded elsewhere, because settling found no end. */
  restless: boolean;
  partition: Partition;
  /** Set when the network has to be solved whole; see network.ts. */
  whole: boolean;
  /** Mechanisms that opened by themselves on a short circuit, and supplies short-circuited, in that order of events. */
  readonly tripped: number[];
  readonly shorted: number[];
}

function startOf({ live, frozenAt, drive, positions }: PlanMechanism, start: 'live' | 'dead'): number {
  if (frozenAt !== undefined) return frozenAt;
  if (start === 'live') return live;
  // A fuse is drawn whole, and in a dead start it stays in.
  return drive === 'feed' && positions[0] === 'in' ? live : 0;
}

/** Every mechanism as drawn (`dead`), or with isolators and breakers closed (`live`). Voltages are not yet worked out. */
export function startState(machine: Machine, start: 'live' | 'dead'): State {
  const { plan } = machine;
  const at = new Uint8Array(machine.mechanisms);
  let addsUp = false;
  for (let index = 0; index < at.length; index++) {
    const mechanism = plan.mechanisms[index]!;
    at[index] = 1 << startOf(mechanism, start);
    addsUp ||= mechanism.addsUp === true;
  }
  const supplyOn = new Uint8Array(plan.supplies.length).fill(1);
  return {
    at,
    goal: at.slice(),
    own: at.slice(),
    heading: at.slice(),
    held: new Uint8Array(at.length),
    supplyOn,
    volts: newVolts(machine.axes, plan.loads.length),
    due: new Float64Array(at.length).fill(Infinity),
    left: addsUp ? new Float64Array(at.length) : undefined,
    now: 0,
    firings: 0,
    restless: false,
    partition: partitionFor(machine, at, supplyOn),
    whole: false,
    tripped: [],
    shorted: [],
  };
}

export function copyState(state: State): State {
  return {
    at: state.at.slice(),
    goal: state.goal.slice(),
    own: state.own.slice(),
    heading: state.heading.slice(),
    held: state.held.slice(),
    supplyOn: state.supplyOn.slice(),
    volts: copyVolts(state.volts),
    due: state.due.slice(),
    left: state.left?.slice(),
    now: state.now,
    firings: state.firings,
    restless: state.restless,
    partition: state.partition,
    whole: state.whole,
    tripped: [...state.tripped],
    shorted: [...state.shorted],
  };
}

/** Numbers up to which copying one by one is faster than asking for it. */
const FEW = 32;

function put(into: Uint8Array, from: Uint8Array): void {
  if (from.length > FEW) into.set(from);
  else for (let index = 0; index < from.length; index++) into[index] = from[index]!;
}

/** The same for numbers of another width: one function for both would have to look which it has. */
function putNumbers(into: Float64Array, from: Float64Array): void {
  if (from.length > FEW) into.set(from);
  else for (let index = 0; index < from.length; index++) into[index] = from[index]!;
}

/** A short list, mostly empty: setting the length of one costs more than looking at it. */
function refill(into: number[], from: readonly number[]): void {
  if (into.length > 0) into.length = 0;
  for (const item of from) into.push(item);
}

/** Makes `into` equal to `from` without allocating; both belong to the same machine. */
export function restoreState(into: State, from: State): void {
  put(into.at, from.at);
  put(into.goal, from.goal);
  put(into.own, from.own);
  put(into.heading, from.heading);
  put(into.held, from.held);
  put(into.supplyOn, from.supplyOn);
  for (let axis = 0; axis < into.volts.length; axis++) putNumbers(into.volts[axis]!, from.volts[axis]!);
  putNumbers(into.due, from.due);
  if (into.left && from.left) putNumbers(into.left, from.left);
  into.now = from.now;
  into.firings = from.firings;
  into.restless = from.restless;
  into.partition = from.partition;
  into.whole = from.whole;
  refill(into.tripped, from.tripped);
  refill(into.shorted, from.shorted);
}
