import { z } from 'zod';
import { base, colour, contacts } from './fields.ts';

export const pushButton = z.strictObject({
  kind: z.literal('push-button'),
  ...base,
  contacts,
  colour: colour.optional(),
});

/** Stays pressed until it is released (pulled or turned back). */
export const emergencyStop = z.strictObject({ kind: z.literal('emergency-stop'), ...base, contacts });
