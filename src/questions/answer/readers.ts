/** How a typed line is read, by kind. Apart from the kinds: the page, on which nothing is typed, does without. */
import type { Checked } from '../../../shared/problem.ts';
import type { AnswerOf, QuestionKind, QuestionOf } from '../../../shared/question.ts';
import type { Words } from '../../words/index.ts';
import type { StatesKind, StatesQuestion } from '../entries.ts';
import { readVolts } from '../kinds/meter/volts.ts';
import { readChoice } from '../kinds/wiring/read.ts';
import { readStates } from './read-states.ts';

type Reader<K extends QuestionKind> = (
  question: QuestionOf<K>,
  text: string,
  words: Words,
) => Checked<AnswerOf<K>>;

function reads<K extends StatesKind>(kind: K): Reader<K> {
  return (question, text, words) => {
    const read = readStates(question as StatesQuestion, text, words);
    return read.ok ? { ok: true, value: { kind, states: read.value } as AnswerOf<K> } : read;
  };
}

const READERS: { readonly [K in QuestionKind]: Reader<K> } = {
  'lamp-states': reads('lamp-states'),
  'input-states': reads('input-states'),
  'relay-states': reads('relay-states'),
  wiring: readChoice,
  meter: (_, text, words) => {
    const read = readVolts(text, words);
    return read.ok ? { ok: true, value: { kind: 'meter', volts: read.value } } : read;
  },
  sequence: reads('sequence'),
  'still-live': reads('still-live'),
};

/** The reader of a kind's answers; used with questions of the same kind. */
export const readerOf = <K extends QuestionKind>(kind: K): Reader<K> => READERS[kind];
