import { z } from 'zod';
import { base, colour, rating, watts } from './fields.ts';

export const lamp = z.strictObject({
  kind: z.literal('lamp'),
  ...base,
  colour: colour.optional(),
  watts,
  rating,
});
export const sounder = z.strictObject({ kind: z.literal('sounder'), ...base, watts, rating });
export const valve = z.strictObject({ kind: z.literal('valve'), ...base, watts, rating });
