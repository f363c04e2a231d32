/**
 * The supplies that control circuits are drawn with, and what a panel has in front of each: ratings in common use (common
 * practice, no source); at most 230 V at 50 Hz by IEC 60204-1, 9.1.2 (from memory).
 */
import type { Rating } from '../../shared/circuit.ts';
import type { Random } from './random.ts';

export interface Feeding {
  readonly rating: Rating;
  /** What makes the voltage. */
  readonly source: string;
  /** Ratings that its fuse or breaker would have. */
  readonly amps: readonly number[];
  /** A breaker is too coarse for electronics. */
  readonly fused?: true;
  /**
   * One side is bonded. Where neither is, the first fault to earth goes unseen and the second may start a machine, so it would need
   * insulation monitoring (IEC 60204-1, 9.4.3, from memory), which these drawings don't have.
   */
  readonly bonded?: true;
}

/** Extra-low voltage: up to 50 V AC or 120 V DC (IEC 61140, from memory). */
const EXTRA_LOW: readonly Feeding[] = [
  { rating: { volts: 24, current: 'AC' }, source: 'transformer', amps: [2, 4, 6] },
  { rating: { volts: 24, current: 'DC' }, source: 'power supply unit', amps: [2, 4, 6] },
  { rating: { volts: 48, current: 'DC' }, source: 'power supply unit', amps: [2, 4] },
];

const CONTROL: readonly Feeding[] = [
  ...EXTRA_LOW,
  { rating: { volts: 110, current: 'AC' }, source: 'transformer', amps: [1, 2, 4], bonded: true },
  { rating: { volts: 230, current: 'AC' }, source: 'transformer', amps: [1, 2, 4], bonded: true },
];

/** What a controller's inputs are fed from. */
export const SIGNALS = {
  electronics: {
    rating: { volts: 3.3, current: 'DC' },
    source: 'electronics',
    amps: [0.1, 0.25, 0.5],
    fused: true,
  },
  inputs: { rating: { volts: 24, current: 'DC' }, source: 'power supply unit', amps: [0.5, 1, 2] },
} as const satisfies Readonly<Record<string, Feeding>>;

/** Half of all circuits have one of the two 24 V supplies. */
export const pickControl = (random: Random): Feeding =>
  random.pick(random.chance(0.5) ? EXTRA_LOW.slice(0, 2) : CONTROL);

/**
 * Where a relay also switches extra-low voltage: beside it a pole with 110 or 230 V would need a relay, sockets and wires with
 * double insulation between the poles (IEC 60204-1, 6.4 and IEC 61140, from memory), which no drawing shows.
 */
export const pickExtraLowControl = (random: Random): Feeding => random.pick(EXTRA_LOW);
