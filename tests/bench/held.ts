import type { Speed } from './reference.ts';
import type { Row } from './row.ts';

export interface Held {
  /** The bound as it is on this machine, where there is one. */
  readonly here?: number;
  /** Whether the figure keeps it, or misses it by no more than the noise. */
  readonly kept: boolean;
}

/** Times grow with a slower machine and rates fall; sizes and counts are what they are. */
const TIMES = new Set(['ms', 'ms processor', 's', 'us', 'microseconds']);
const RATES = new Set(['per second', 'a second']);

/** Holds a figure against its bound, on a machine of that speed. */
export function heldAgainst({ value, unit, bound, better }: Row, { slower, noise }: Speed): Held {
  if (bound === undefined) return { kept: true };
  if (better === 'more' || RATES.has(unit)) {
    const here = RATES.has(unit) ? bound / slower : bound;
    return { here, kept: value * (1 + noise) >= here };
  }
  const isTime = TIMES.has(unit);
  const here = isTime ? bound * slower : bound;
  return { here, kept: value <= here * (isTime ? 1 + noise : 1) };
}
