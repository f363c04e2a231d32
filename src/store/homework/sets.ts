import type { Kysely } from 'kysely';
import type { HomeworkSet } from '../../../shared/homework.ts';
import type { HomeworkWish } from '../../../shared/homework-views.ts';
import type { Tables } from '../schema.ts';
import { keptSet } from './rows.ts';
import type { KeptSet, NewSet } from './types.ts';

/** See `HomeworkStore.draft`. */
export async function draft(db: Kysely<Tables>, wanted: NewSet, now: number): Promise<KeptSet> {
  const row = await db
    .insertInto('sets')
    .values({
      id: wanted.set.id,
      class: wanted.class,
      wish_json: JSON.stringify(wanted.wish),
      set_json: JSON.stringify(wanted.set),
      made_by: wanted.madeBy,
      made_at: now,
      issued_at: null,
      withdrawn_at: null,
    })
    .returningAll()
    .executeTakeFirstOrThrow();
  return keptSet(row);
}

/** See `HomeworkStore.changeDraft`. */
export async function changeDraft(
  db: Kysely<Tables>,
  set: HomeworkSet,
  wish: HomeworkWish,
): Promise<boolean> {
  const { numUpdatedRows } = await db
    .updateTable('sets')
    .set({ set_json: JSON.stringify(set), wish_json: JSON.stringify(wish) })
    .where('id', '=', set.id)
    .where('issued_at', 'is', null)
    .executeTakeFirst();
  return numUpdatedRows > 0n;
}

export async function setById(db: Kysely<Tables>, id: string): Promise<KeptSet | null> {
  const row = await db.selectFrom('sets').selectAll().where('id', '=', id).executeTakeFirst();
  return row ? keptSet(row) : null;
}

/** See `HomeworkStore.setsOf`. */
export async function setsOf(db: Kysely<Tables>, classes: readonly string[]): Promise<readonly KeptSet[]> {
  if (classes.length === 0) return [];
  const rows = await db
    .selectFrom('sets')
    .selectAll()
    .where('class', 'in', classes)
    .orderBy('made_at', 'desc')
    .orderBy('id')
    .execute();
  return rows.map(keptSet);
}

/** See `HomeworkStore.issue`. */
export async function issue(db: Kysely<Tables>, id: string, now: number): Promise<KeptSet | null> {
  await db
    .updateTable('sets')
    .set({ issued_at: now })
    .where('id', '=', id)
    .where('issued_at', 'is', null)
    .where('withdrawn_at', 'is', null)
    .execute();
  const kept = await setById(db, id);
  return kept?.withdrawnAt === null ? kept : null;
}

/** See `HomeworkStore.closeLater`. */
export function closeLater(
  db: Kysely<Tables>,
  id: string,
  closesAt: number,
  now: () => number,
): Promise<boolean> {
  return db.transaction().execute(async (transaction) => {
    // Takes the set for itself, so that of two who move it neither undoes what the other did.
    const row = await transaction
      .updateTable('sets')
      .set({ id })
      .where('id', '=', id)
      .where('issued_at', 'is not', null)
      .where('withdrawn_at', 'is', null)
      .returningAll()
      .executeTakeFirst();
    if (!row) return false;
    const { set, wish } = keptSet(row);
    if (now() >= set.closesAt || closesAt < set.closesAt) return false;
    await transaction
      .updateTable('sets')
      .set({
        set_json: JSON.stringify({ ...set, closesAt }),
        wish_json: JSON.stringify({ ...wish, closesAt }),
      })
      .where('id', '=', id)
      .execute();
    return true;
  });
}

/** See `HomeworkStore.withdraw`. */
export async function withdraw(
  db: Kysely<Tables>,
  id: string,
  now: number,
): Promise<'erased' | 'withdrawn' | null> {
  const { numDeletedRows } = await db
    .deleteFrom('sets')
    .where('id', '=', id)
    .where('issued_at', 'is', null)
    .executeTakeFirst();
  if (numDeletedRows > 0n) return 'erased';
  await db
    .updateTable('sets')
    .set({ withdrawn_at: now })
    .where('id', '=', id)
    .where('withdrawn_at', 'is', null)
    .execute();
  return (await setById(db, id)) ? 'withdrawn' : null;
}
