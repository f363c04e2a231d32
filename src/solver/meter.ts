import type { Machine } from './machine.ts';
import { solveNetwork } from './network.ts';
import type { State } from './state.ts';

/**
 * What a voltmeter of very high resistance shows between two terminals: volts with the sign of the first against the
 * second (with phases the magnitude). Between two supplies without a common reference it shows nothing, and so it does
 * where a conductor hangs free: `volts` is 0 and `floating` true.
 */
export function meter(
  machine: Machine,
  state: State,
  first: string,
  second: string,
): { volts: number; floating: boolean } {
  const { plan } = machine;
  const a = plan.nodeOf.get(first);
  const b = plan.nodeOf.get(second);
  if (a === undefined || b === undefined)
    throw new RangeError(`no terminal ${a === undefined ? first : second}`);
  const network = solveNetwork(machine, state.at, state.supplyOn);
  if (network.reference[a] !== network.reference[b]) return { volts: 0, floating: true };
  const re = network.re[a]! - network.re[b]!;
  const im = network.im[a]! - network.im[b]!;
  return { volts: machine.phases ? Math.hypot(re, im) : re, floating: false };
}
