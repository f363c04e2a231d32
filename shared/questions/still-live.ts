import { z } from 'zod';
import { terminalRef } from '../scenario.ts';
import { MOST_ASKED, questionBase, states } from './base.ts';

const kind = z.literal('still-live');

/** Which of these terminals still are live with an isolator open or a breaker tripped? */
export const stillLiveQuestion = z.strictObject({
  kind,
  ...questionBase,
  asked: z.array(terminalRef).min(1).max(MOST_ASKED),
});
/** By terminal: live, dead. */
export const stillLiveAnswer = z.strictObject({ kind, states });
