import { partsOfVolts } from './axes.ts';
import type { Machine } from './machine.ts';
import { solveNetwork } from './network.ts';
import type { State } from './state.ts';

/** Alternating volts below this are rounding. */
const NOTHING = 1e-6;

export interface Reading {
  readonly volts: number;
  readonly floating: boolean;
}

/**
 * What a voltmeter of very high resistance shows between two terminals: direct volts with the sign of the first against the
 * second; as soon as there is an alternating part the r.m.s. value of all of it, which has no sign. Between two supplies
 * without a common reference it shows nothing, and so it does where a conductor hangs free: `volts` is 0 and `floating` true.
 */
export const meter = (machine: Machine, state: State, first: string, second: string): Reading =>
  meterIn(machine, state)(first, second);

/** `meter` for many pairs of terminals in one state: the network is solved once. */
export function meterIn(machine: Machine, state: State): (first: string, second: string) => Reading {
  const { plan, axes } = machine;
  const { volts, reference } = solveNetwork(machine, state.at, state.supplyOn);
  return (first, second) => {
    const a = plan.nodeOf.get(first);
    const b = plan.nodeOf.get(second);
    if (a === undefined || b === undefined)
      throw new RangeError(`no terminal ${a === undefined ? first : second}`);
    if (reference[a] !== reference[b]) return { volts: 0, floating: true };
    const { direct, alternating } = partsOfVolts(
      axes,
      (axis) => volts[axis]![a]! - volts[axis]![b]!,
      axes.count,
    );
    return { volts: alternating < NOTHING ? direct : Math.hypot(direct, alternating), floating: false };
  };
}
