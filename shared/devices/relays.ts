import { z } from 'zod';
import { base, count, rating } from './fields.ts';

export const relay = z.strictObject({ kind: z.literal('relay'), ...base, poles: count(4), rating });

/** Set coil A1-A2, reset coil B1-B2; keeps its position without supply. */
export const latchingRelay = z.strictObject({
  kind: z.literal('latching-relay'),
  ...base,
  poles: count(4),
  rating,
});
