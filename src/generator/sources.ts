/** The supplies that control circuits are drawn with. */
import type { Rating } from '../../shared/circuit.ts';
import type { Random } from './random.ts';

/** Control voltages in common use (common practice, no source); at most 230 V at 50 Hz by IEC 60204-1, 9.1.2 (from memory). */
export const CONTROL_RATINGS: readonly Rating[] = [
  { volts: 24, current: 'AC' },
  { volts: 24, current: 'DC' },
  { volts: 48, current: 'DC' },
  { volts: 110, current: 'AC' },
  { volts: 230, current: 'AC' },
];

/** Half of all circuits have one of the two 24 V supplies. */
export const pickControlRating = (random: Random): Rating =>
  random.pick(random.chance(0.5) ? CONTROL_RATINGS.slice(0, 2) : CONTROL_RATINGS);
