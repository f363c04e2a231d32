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

/** Starts with its contacts made for `on` seconds, then at rest for `off` seconds, for as long as it is energised. */
export const flasher = z.strictObject({
  kind: z.literal('flasher'),
  ...base,
  on: seconds,
  off: seconds,
  poles: count(2),
  rating,
});
