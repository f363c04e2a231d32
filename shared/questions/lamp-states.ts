import { z } from 'zod';
import { designation } from '../circuit.ts';
import { MOST_ASKED, questionBase, states } from './base.ts';

const kind = z.literal('lamp-states');

/** Which of these lamps are lit? */
export const lampStatesQuestion = z.strictObject({
  kind,
  ...questionBase,
  asked: z.array(designation).min(1).max(MOST_ASKED),
});
/** By designation: lamps lit, dark, dim, flashing; sounders, valves and motors on, off, weak, pulsing. */
export const lampStatesAnswer = z.strictObject({ kind, states });
