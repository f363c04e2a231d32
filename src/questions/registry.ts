import type { QuestionKind } from '../../shared/question.ts';
import { inputStates } from './input-states.kind.ts';
import type { Kind } from './kind.ts';
import { lampStates } from './lamp-states.kind.ts';
import { meterKind } from './meter.kind.ts';
import { relayStates } from './relay-states.kind.ts';
import { sequence } from './sequence.kind.ts';
import { stillLive } from './still-live.kind.ts';
import { wiring } from './wiring.kind.ts';

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
