import { z } from 'zod';
import { base, count, rating, seconds } from './fields.ts';

export const onDelay = z.strictObject({
  kind: z.literal('on-delay'),
  ...base,
  seconds,
  poles: count(2),
  rating,
});

export const offDelay = z.strictObject({
  kind: z.literal('off-delay'),
  ...base,
  seconds,
  poles: count(2),
  rating,
});

/**
 * Off-delay with a permanent supply at A1-A2; the signal comes to its control input, between B1 and A2. Without supply it
 * releases at once.
 */
export const suppliedOffDelay = z.strictObject({
  kind: z.literal('supplied-off-delay'),
  ...base,
  seconds,
  poles: count(2),
  rating,
});

/** Starts with its contacts made for `on` seconds, then at rest for `off` seconds, for as long as it is energised. */
export const flasher = z.strictObject({
  kind: z.literal('flasher'),
  ...base,
  on: seconds,
  off: seconds,
  poles: count(2),
  rating,
});
