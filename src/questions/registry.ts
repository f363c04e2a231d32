import type { QuestionKind } from '../../shared/question.ts';
import type { Kind } from './kind.ts';
import { inputStates } from './kinds/input-states/kind.ts';
import { lampStates } from './kinds/lamp-states/kind.ts';
import { meterKind } from './kinds/meter/kind.ts';
import { relayStates } from './kinds/relay-states/kind.ts';
import { sequence } from './kinds/sequence/kind.ts';
import { stillLive } from './kinds/still-live/kind.ts';
import { wiring } from './kinds/wiring/kind.ts';

/** Every kind of question. */
export const KINDS: { readonly [K in QuestionKind]: Kind<K> } = {
  'lamp-states': lampStates,
  'input-states': inputStates,
  'relay-states': relayStates,
  wiring,
  meter: meterKind,
  sequence,
  'still-live': stillLive,
};

/** The kind of that name; used with questions and answers of the same kind. */
export const kindOf = <K extends QuestionKind>(kind: K): Kind<K> => KINDS[kind];
