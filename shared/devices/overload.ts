import { z } from 'zod';
import { base } from './fields.ts';

/** Main poles 1-2 3-4 5-6, auxiliary break 95-96 and make 97-98. */
export const overload = z.strictObject({ kind: z.literal('overload'), ...base });
