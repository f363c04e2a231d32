/** What each kind of question asks, by kind: one file each. */
import { inputStates } from './input-states.ts';
import { lampStates } from './lamp-states.ts';
import { meter } from './meter.ts';
import { relayStates } from './relay-states.ts';
import { sequence } from './sequence.ts';
import { stillLive } from './still-live.ts';
import { wiring } from './wiring.ts';

export const kinds = {
  'lamp-states': lampStates,
  'input-states': inputStates,
  'relay-states': relayStates,
  wiring,
  meter,
  sequence,
  'still-live': stillLive,
};
