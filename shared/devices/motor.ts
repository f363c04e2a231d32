import { z } from 'zod';
import { base } from './fields.ts';

/** Three-phase motor, `volts` the rating of one winding: 3 terminals (U1 V1 W1, joined in star inside) or 6. */
export const motor = z.strictObject({
  kind: z.literal('motor'),
  ...base,
  terminals: z.union([z.literal(3), z.literal(6)]),
  volts: z.number().positive().max(1000),
});
