import { z } from 'zod';
import { base, count, points } from './fields.ts';

/** Controller inputs I1… against COM. `points` are the texts beside each input. */
export const inputs = z.strictObject({
  kind: z.literal('inputs'),
  ...base,
  count: count(16),
  type: z.enum(['3.3V', '24V-1', '24V-2', '24V-3']),
  points,
});

/** Controller outputs Q1…, each a contact from the common terminal COM that the program closes. */
export const outputs = z.strictObject({ kind: z.literal('outputs'), ...base, count: count(16), points });
