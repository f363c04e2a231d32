import { z } from 'zod';
import { amps, base, count } from './fields.ts';

export const fuse = z.strictObject({ kind: z.literal('fuse'), ...base, poles: count(3), amps });
export const breaker = z.strictObject({ kind: z.literal('breaker'), ...base, poles: count(3), amps });
export const isolator = z.strictObject({ kind: z.literal('isolator'), ...base, poles: count(4) });
