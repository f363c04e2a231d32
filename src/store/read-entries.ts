import type { Kysely, Selectable } from 'kysely';
import { type Mark, mark } from '../../shared/question.ts';
import { markOfToday } from '../practice/older-marks.ts';
import { readRecord } from './record-text.ts';
import type { AnswersTable, Tables } from './schema.ts';
import type { AnswerEntry, EntryPage } from './types.ts';

export const ENTRY_COLUMNS = [
  'number',
  'id',
  'arrived_at',
  'record_version',
  'record_json',
  'corrected_mark_json',
  'proof',
] as const;
type EntryRow = Pick<Selectable<AnswersTable>, (typeof ENTRY_COLUMNS)[number]>;

/** A corrected mark; one that can't be read any more is as good as none and can be made again. */
function correctedMarkIn(text: string | null): Mark | null {
  if (text === null) return null;
  try {
    return mark.parse(markOfToday(JSON.parse(text)));
  } catch {
    return null;
  }
}

export function entryOf(row: EntryRow): AnswerEntry {
  const { number, id } = row;
  const arrivedAt = row.arrived_at;
  const reading = readRecord(row.record_json, row.record_version);
  if (!reading.ok) return { kind: 'unreadable', number, id, arrivedAt, why: reading.why };
  const correctedMark = correctedMarkIn(row.corrected_mark_json);
  return { kind: 'answer', number, id, arrivedAt, record: reading.record, correctedMark };
}

export const rowsAfter = (
  db: Kysely<Tables>,
  learner: string,
  after: number,
  limit: number,
): Promise<readonly EntryRow[]> =>
  db
    .selectFrom('answers')
    .select(ENTRY_COLUMNS)
    .where('learner', '=', learner)
    .where('number', '>', after)
    .orderBy('number')
    .limit(limit)
    .execute();

/** See `Store.entriesAfter`. */
export async function entriesAfter(
  db: Kysely<Tables>,
  learner: string,
  after: number,
  limit: number,
): Promise<EntryPage> {
  const rows = await rowsAfter(db, learner, after, limit);
  // Read after the rows, so that the last number is never below one of theirs.
  const history = await db
    .selectFrom('histories')
    .select(['history', 'answers'])
    .where('learner', '=', learner)
    .executeTakeFirst();
  return { history: history?.history ?? null, last: history?.answers ?? 0, entries: rows.map(entryOf) };
}
