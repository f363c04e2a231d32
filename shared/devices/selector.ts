import { z } from 'zod';
import { base, contacts } from './fields.ts';

/** The first position is the drawn one. */
export const selector = z.strictObject({
  kind: z.literal('selector'),
  ...base,
  positions: z
    .array(z.string().regex(/^[A-Za-z0-9]{1,12}$/))
    .min(2)
    .max(6),
  contacts,
});
