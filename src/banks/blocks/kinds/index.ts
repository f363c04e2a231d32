/** How the questions of each kind are written in a bank. */
import type { QuestionKind } from '../../../../shared/question.ts';
import { meterReader } from './meter.ts';
import { plainStateReaders } from './plain-states.ts';
import { sequenceReader } from './sequence.ts';
import type { KindReader } from './types.ts';
import { wiringReader } from './wiring.ts';

export type { AskedQuestion } from './types.ts';

const READERS: readonly KindReader[] = [...plainStateReaders, wiringReader, meterReader, sequenceReader];

export const readerOf = (kind: QuestionKind): KindReader => READERS.find((reader) => reader.kind === kind)!;
