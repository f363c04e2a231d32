import { z } from 'zod';
import { base, contactSpec, rating } from './fields.ts';

export const contactor = z.strictObject({
  kind: z.literal('contactor'),
  ...base,
  mains: z.number().int().min(0).max(4),
  contacts: z.array(contactSpec).max(12),
  rating,
});
