import { z } from 'zod';
import { designation } from '../circuit.ts';
import { MOST_ASKED, questionBase, states } from './base.ts';

const kind = z.literal('relay-states');

/** Which of these relays (contactors, timers) have operated? */
export const relayStatesQuestion = z.strictObject({
  kind,
  ...questionBase,
  asked: z.array(designation).min(1).max(MOST_ASKED),
});
/** By designation: operated, rest, changing. */
export const relayStatesAnswer = z.strictObject({ kind, states });
