import { z } from 'zod';
import { base, count } from './fields.ts';

/** A row of through terminals 1…count. */
export const terminals = z.strictObject({ kind: z.literal('terminals'), ...base, count: count(60) });
