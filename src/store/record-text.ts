/**
 * How an answer's record is written down, and read again years later. Each row says which form its text has. When the
 * form of shared/practice.ts changes so that older texts no longer read, RECORD_VERSION goes up and a step that makes a
 * text of the version before into one of the next joins STEPS; the texts themselves are never rewritten. A text that
 * still doesn't read makes that one answer unreadable and nothing else: number, moment, skill and attempt stand beside it.
 */
import { type AnswerRecord, answerRecord } from '../../shared/practice.ts';
import { withMarkOfToday } from '../practice/older-marks.ts';
import type { StoreWords } from '../words/en/store.ts';
import { formSaid } from '../words/form-said.ts';
import type { StatementOf } from '../words/statement.ts';

/** The form written now. */
export const RECORD_VERSION = 2;

/** STEPS[n - 1] makes a record of version n into one of version n + 1. */
const STEPS: readonly ((record: unknown) => unknown)[] = [withMarkOfToday];

/** Why a record can't be read. */
export type UnreadableSaid = StatementOf<StoreWords['unreadable']>;

export type RecordReading =
  | { readonly ok: true; readonly record: AnswerRecord }
  | { readonly ok: false; readonly why: UnreadableSaid };

export const writeRecord = (record: AnswerRecord): string => JSON.stringify(record);

/** Reads the text of a record of any version, or says why it can't be read. */
export function readRecord(text: string, version: number): RecordReading {
  if (version > RECORD_VERSION)
    return { ok: false, why: { says: 'fromLater', form: version, known: RECORD_VERSION } };
  let value: unknown;
  try {
    value = STEPS.slice(version - 1).reduce((older, step) => step(older), JSON.parse(text));
  } catch {
    return { ok: false, why: { says: 'noJson' } };
  }
  const reading = answerRecord.safeParse(value);
  if (reading.success) return { ok: true, record: reading.data };
  return { ok: false, why: { says: 'notOfForm', form: formSaid(reading.error.issues[0]!, value) } };
}
