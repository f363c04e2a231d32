import { z } from 'zod';
import { terminalRef } from '../scenario.ts';
import { questionBase } from './base.ts';

const kind = z.literal('meter');

/** What does the meter read between these two points? Volts, within a tolerance. */
export const meterQuestion = z.strictObject({
  kind,
  ...questionBase,
  points: z.tuple([terminalRef, terminalRef]),
  tolerance: z.number().positive(),
});
/**
 * Volts; `null`: the meter shows nothing because the points have no common reference; left out when nothing was answered.
 */
export const meterAnswer = z.strictObject({ kind, volts: z.number().nullable().optional() });
