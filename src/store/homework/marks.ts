import type { Kysely, Transaction } from 'kysely';
import type { PaperMark } from '../../../shared/homework.ts';
import { shortMark } from '../../homework/index.ts';
import type { Tables } from '../schema.ts';
import { markIn, overrideIn, paperIn } from './rows.ts';
import type { KeptPaper, NewOverride } from './types.ts';

/** See `HomeworkStore.mark`. */
export async function mark(
  db: Kysely<Tables>,
  { id, saves, paper }: KeptPaper,
  given: PaperMark,
  now: number,
): Promise<boolean> {
  const { numUpdatedRows } = await db
    .updateTable('papers')
    .set({
      marked_at: now,
      mark_json: JSON.stringify(given),
      short_json: JSON.stringify(shortMark(paper, given)),
    })
    .where('id', '=', id)
    .where('marked_at', 'is', null)
    .where('saves', '=', saves)
    .executeTakeFirst();
  return numUpdatedRows > 0n;
}

export async function remembered(db: Kysely<Tables>, paper: string, now: number): Promise<void> {
  await db
    .updateTable('papers')
    .set({ remembered_at: now })
    .where('id', '=', paper)
    .where('remembered_at', 'is', null)
    .execute();
}

/** See `HomeworkStore.markOf`. */
export async function markOf(db: Kysely<Tables>, paper: string): Promise<PaperMark | null> {
  const row = await db.selectFrom('papers').select('mark_json').where('id', '=', paper).executeTakeFirst();
  if (!row || row.mark_json === null) return null;
  const first = markIn(row.mark_json);
  const rows = await db
    .selectFrom('overrides')
    .select(['item', 'override_json'])
    .where('paper', '=', paper)
    .orderBy('item')
    .orderBy('number')
    .execute();
  const items = first.items.map((item, index) => ({
    ...item,
    overrides: rows.filter((one) => one.item === index).map((one) => overrideIn(one.override_json)),
  }));
  return { ...first, items };
}

/**
 * Adds overrides to a paper that this transaction has written to, and brings its short mark up to date; adds none, and gives false,
 * where an item has others than were known.
 */
async function add(db: Transaction<Tables>, paper: string, wanted: readonly NewOverride[]): Promise<boolean> {
  const counts = await db
    .selectFrom('overrides')
    .select(({ fn }) => ['item', fn.count<number>('number').as('count')])
    .where('paper', '=', paper)
    .groupBy('item')
    .execute();
  const last = new Map(counts.map(({ item, count }) => [item, count]));
  if (wanted.some(({ item, known }) => known !== undefined && known !== (last.get(item) ?? 0))) return false;
  const rows = wanted.map(({ item, override }) => {
    const number = (last.get(item) ?? 0) + 1;
    last.set(item, number);
    return { paper, item, number, override_json: JSON.stringify(override) };
  });
  if (rows.length > 0) await db.insertInto('overrides').values(rows).execute();
  const { paper_json } = await db
    .selectFrom('papers')
    .select('paper_json')
    .where('id', '=', paper)
    .executeTakeFirstOrThrow();
  const whole = await markOf(db, paper);
  if (!whole) throw new RangeError('an override of a paper without a mark');
  await db
    .updateTable('papers')
    .set({ short_json: JSON.stringify(shortMark(paperIn(paper_json), whole)) })
    .where('id', '=', paper)
    .execute();
  return true;
}

/** See `HomeworkStore.override`. */
export function override(
  db: Kysely<Tables>,
  paper: string,
  wanted: readonly NewOverride[],
): Promise<boolean | 'changed'> {
  return db.transaction().execute(async (transaction) => {
    const locked = await transaction
      .updateTable('papers')
      .set(({ ref }) => ({ saves: ref('saves') }))
      .where('id', '=', paper)
      .where('marked_at', 'is not', null)
      .returning('id')
      .executeTakeFirst();
    if (!locked) return false;
    return (await add(transaction, paper, wanted)) || 'changed';
  });
}

/** See `HomeworkStore.typed`. */
export function typed(
  db: Kysely<Tables>,
  paper: string,
  first: PaperMark,
  wanted: readonly NewOverride[],
  now: number,
): Promise<void> {
  return db.transaction().execute(async (transaction) => {
    await transaction
      .updateTable('papers')
      .set(({ fn, val, ref }) => ({
        submitted_at: fn.coalesce(ref('submitted_at'), val(now)),
        mark_json: fn.coalesce(ref('mark_json'), val(JSON.stringify(first))),
        marked_at: fn.coalesce(ref('marked_at'), val(now)),
      }))
      .where('id', '=', paper)
      .execute();
    await add(transaction, paper, wanted);
  });
}
