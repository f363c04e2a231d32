/** Questions and answers of every kind: a line for each. `question-kinds.ts` has their names for whoever only names them. */
import { z } from 'zod';
import { inputStatesAnswer, inputStatesQuestion } from './input-states.ts';
import { lampStatesAnswer, lampStatesQuestion } from './lamp-states.ts';
import { meterAnswer, meterQuestion } from './meter.ts';
import { relayStatesAnswer, relayStatesQuestion } from './relay-states.ts';
import { sequenceAnswer, sequenceQuestion } from './sequence.ts';
import { stillLiveAnswer, stillLiveQuestion } from './still-live.ts';
import { wiringAnswer, wiringQuestion } from './wiring.ts';

export const question = z.discriminatedUnion('kind', [
  lampStatesQuestion,
  inputStatesQuestion,
  relayStatesQuestion,
  wiringQuestion,
  meterQuestion,
  sequenceQuestion,
  stillLiveQuestion,
]);

/** An answer, by kind. */
export const answer = z.discriminatedUnion('kind', [
  lampStatesAnswer,
  inputStatesAnswer,
  relayStatesAnswer,
  wiringAnswer,
  meterAnswer,
  sequenceAnswer,
  stillLiveAnswer,
]);
