import { z } from 'zod';
import { base, contacts } from './fields.ts';

export const fieldContact = z.strictObject({ kind: z.literal('field-contact'), ...base, contacts });
export const limitSwitch = z.strictObject({ kind: z.literal('limit-switch'), ...base, contacts });
export const floatSwitch = z.strictObject({ kind: z.literal('float-switch'), ...base, contacts });
