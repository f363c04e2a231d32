import { z } from 'zod';
import { inputPoint, MOST_ASKED, questionBase, states } from './base.ts';

const kind = z.literal('input-states');

/** Which of these inputs read 1? */
export const inputStatesQuestion = z.strictObject({
  kind,
  ...questionBase,
  asked: z.array(inputPoint).min(1).max(MOST_ASKED),
});
/** By input point: 1, 0, undefined, changing. */
export const inputStatesAnswer = z.strictObject({ kind, states });
