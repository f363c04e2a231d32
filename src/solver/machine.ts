/**
 * A plan compiled into typed arrays: settled many times without allocating. Positions are bit masks: a mechanism that
 * rests in position p has bit p, one on its way from p to q has both bits; a contact is closed when every bit of its
 * mechanism is one of the positions in which it is closed. So a changeover on its way has both legs open.
 */

import { isSecond } from '../circuit/anatomy/index.ts';
import { once } from '../graph/index.ts';
import { type Axes, axesOf } from './axes.ts';
import type { Partition } from './islands.ts';
import type { Evaluated } from './network-solved.ts';
import type { Plan } from './plan.ts';

/** Drives as small numbers, for the inner loops. */
export const DRIVE = {
  coil: 0,
  latch: 1,
  'on-delay': 2,
  'off-delay': 3,
  flasher: 4,
  'supplied-off-delay': 5,
  act: 6,
  feed: 7,
} as const;

export interface Machine {
  readonly plan: Plan;
  readonly mechanisms: number;
  readonly drive: Uint8Array;
  /** Bit of the position in which it never moves again, or 0. */
  readonly frozen: Uint8Array;
  /** Index of a mechanism by its id, `-K3`. */
  readonly mechanismOf: ReadonlyMap<string, number>;
  /** Positions in which a switch is closed, as a mask; 255 always, 0 never. */
  readonly closedMask: Uint8Array;
  readonly switchMechanism: Int32Array;
  /** The coil of a mechanism (set coil, control input), and the second one (reset coil, own supply); -1 where it has none. */
  readonly coilOf: Int32Array;
  readonly secondOf: Int32Array;
  /** Load arrays. Limits in volts; a load without limits has Infinity. */
  readonly loadMechanism: Int32Array;
  readonly operateVolts: Float64Array;
  readonly releaseVolts: Float64Array;
  /** The parts that voltages have. */
  readonly axes: Axes;
  /** Partitions met so far, by the state of the feeding devices; see partition.ts. */
  readonly partitions: Map<string, Partition>;
  /** Whole networks solved so far, by where everything stands; see network.ts. */
  readonly networks: Map<string, Evaluated>;
  /** Mechanisms that feed: fuses, breakers, isolators. */
  readonly feeds: readonly number[];
  /** Counts steps of evaluating, so that whoever explores knows what it costs. */
  readonly effort: { steps: number };
  /** Working memory of settling: mechanisms whose coil may have changed. */
  readonly candidate: Uint8Array;
  readonly candidates: Int32Array;
  /** Those that have left in this wave. */
  readonly travellers: Int32Array;
}

// What is compiled of a list of a plan is compiled once: a plan with something changed, as somebody with a wrong idea sees it, has the
// other lists from the one before.

const ofMechanisms = once((mechanisms: Plan['mechanisms']) => {
  const drive = new Uint8Array(mechanisms.length);
  const frozen = new Uint8Array(mechanisms.length);
  const mechanismOf = new Map<string, number>();
  const feeds: number[] = [];
  for (let index = 0; index < mechanisms.length; index++) {
    const { id, frozenAt, drive: moved } = mechanisms[index]!;
    drive[index] = DRIVE[moved];
    if (frozenAt !== undefined) frozen[index] = 1 << frozenAt;
    mechanismOf.set(id, index);
    if (moved === 'feed') feeds.push(index);
  }
  return { drive, frozen, mechanismOf, feeds };
});

const ofSwitches = once((switches: Plan['switches']) => {
  const closedMask = new Uint8Array(switches.length);
  const switchMechanism = new Int32Array(switches.length);
  for (let index = 0; index < switches.length; index++) {
    const { fixed, closedIn, mechanism } = switches[index]!;
    switchMechanism[index] = mechanism;
    if (fixed === 'closed') closedMask[index] = 255;
    else if (fixed !== 'open') for (const position of closedIn) closedMask[index]! |= 1 << position;
  }
  return { closedMask, switchMechanism };
});

const ofLoads = once((loads: Plan['loads']) => {
  const loadMechanism = new Int32Array(loads.length);
  // A burnt coil has its voltage and never operates.
  const operateVolts = new Float64Array(loads.length).fill(Infinity);
  const releaseVolts = new Float64Array(loads.length).fill(Infinity);
  for (let index = 0; index < loads.length; index++) {
    const { mechanism, limits, volts, dead } = loads[index]!;
    loadMechanism[index] = mechanism;
    if (!limits || dead) continue;
    operateVolts[index] = limits.operate * volts;
    releaseVolts[index] = limits.release * volts;
  }
  return { loadMechanism, operateVolts, releaseVolts };
});

const ofCoils = once((loads: Plan['loads']) =>
  once((mechanisms: Plan['mechanisms']): Pick<Machine, 'coilOf' | 'secondOf'> => {
    const coilOf = new Int32Array(mechanisms.length).fill(-1);
    const secondOf = new Int32Array(mechanisms.length).fill(-1);
    for (let index = 0; index < loads.length; index++) {
      const { mechanism, role } = loads[index]!;
      if (mechanism >= 0) (isSecond(role) ? secondOf : coilOf)[mechanism] = index;
    }
    return { coilOf, secondOf };
  }),
);

const ofSupplies = once(axesOf);

/**
 * Compiles a plan. Cost grows linearly with the circuit; the partition for the state it is first run in is worked out
 * on first use.
 */
export function machineOf(plan: Plan): Machine {
  const count = plan.mechanisms.length;
  return {
    plan,
    mechanisms: count,
    ...ofMechanisms(plan.mechanisms),
    ...ofSwitches(plan.switches),
    ...ofLoads(plan.loads),
    ...ofCoils(plan.loads)(plan.mechanisms),
    axes: ofSupplies(plan.supplies),
    partitions: new Map(),
    networks: new Map(),
    effort: { steps: 0 },
    candidate: new Uint8Array(count),
    candidates: new Int32Array(count),
    travellers: new Int32Array(count),
  };
}
