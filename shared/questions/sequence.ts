import { z } from 'zod';
import { MOST_ASKED, questionBase, states } from './base.ts';

const kind = z.literal('sequence');

/** How do these lamps, inputs and relays stand after each of these acts? `after`: how many acts have been done. */
export const sequenceQuestion = z.strictObject({
  kind,
  ...questionBase,
  asked: z
    .array(z.strictObject({ after: z.number().int().min(0).max(200), item: z.string() }))
    .min(1)
    .max(MOST_ASKED),
});
/** By moment and thing, `2 -H1` for after two acts; states as in the kinds that ask for these things. */
export const sequenceAnswer = z.strictObject({ kind, states });
