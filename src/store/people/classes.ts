import { type Kysely, type Selectable, sql, type Transaction } from 'kysely';
import type { ClassDetail, ClassSummary } from '../../../shared/people.ts';
import { newId } from '../new-id.ts';
import type { Tables } from '../schema.ts';
import { byName, insertMember, membershipsOn, membersOf } from './memberships.ts';
import { newJoiningCode, shown } from './secrets.ts';
import type { ClassTable } from './tables.ts';

export interface ClassChange {
  readonly title?: string | undefined;
  readonly intake?: string | null | undefined;
  readonly joiningOpen?: boolean | undefined;
  readonly ended?: boolean | undefined;
}

const summaryIn = (row: Selectable<ClassTable>, learners: number): ClassSummary => ({
  id: row.id,
  title: row.title,
  intake: row.intake,
  createdAt: row.created_at,
  endedAt: row.ended_at,
  learners,
});

/** Keeps everybody else from changing who is in the class until the transaction ends. Has to be the first thing in it. */
export async function lockClass(
  db: Transaction<Tables>,
  id: string,
): Promise<Selectable<ClassTable> | undefined> {
  return db
    .updateTable('classes')
    .set({ joining_open: sql<number>`joining_open` })
    .where('id', '=', id)
    .returningAll()
    .executeTakeFirst();
}

async function detail(db: Kysely<Tables>, id: string): Promise<ClassDetail | null> {
  const row = await db.selectFrom('classes').selectAll().where('id', '=', id).executeTakeFirst();
  if (!row) return null;
  const members = [...(await membersOf(db, id))];
  const learners = members.filter(({ manner }) => manner === 'learner').length;
  return {
    ...summaryIn(row, learners),
    joiningCode: shown(row.joining_code),
    joiningOpen: row.joining_open === 1,
    members,
  };
}

/** A class under a code that no other one has. */
async function insertClass(
  db: Kysely<Tables>,
  title: string,
  intake: string | null,
  now: number,
): Promise<string> {
  for (;;) {
    const row = await db
      .insertInto('classes')
      .values({
        id: newId(),
        title,
        intake,
        joining_code: newJoiningCode(),
        joining_open: 1,
        created_at: now,
        ended_at: null,
      })
      .onConflict((conflict) => conflict.column('joining_code').doNothing())
      .returning('id')
      .executeTakeFirst();
    if (row) return row.id;
  }
}

/** The classes of one tutor, or all of them; those that go on first, then by title. */
async function classesOf(db: Kysely<Tables>, tutor: string | null): Promise<readonly ClassSummary[]> {
  let query = db.selectFrom('classes').selectAll();
  if (tutor !== null)
    query = query.where('id', 'in', ({ selectFrom }) =>
      selectFrom('memberships').select('class').where('person', '=', tutor).where('manner', '=', 'tutor'),
    );
  const rows = await query.execute();
  const counts = await db
    .selectFrom('memberships')
    .select(['class', ({ fn }) => fn.countAll<number>().as('count')])
    .where('manner', '=', 'learner')
    .groupBy('class')
    .execute();
  const learners = new Map(counts.map((row) => [row.class, Number(row.count)]));
  return rows
    .map((row) => summaryIn(row, learners.get(row.id) ?? 0))
    .sort(
      (one, other) =>
        Number(one.endedAt !== null) - Number(other.endedAt !== null) ||
        byName.compare(one.title, other.title) ||
        (one.id < other.id ? -1 : 1),
    );
}

export const classesOn = (db: Kysely<Tables>, now: () => number) => ({
  /** Makes a class; the tutor, where one is named, is its first member. */
  make: (title: string, intake: string | null, tutor: string | null): Promise<ClassDetail> =>
    db.transaction().execute(async (transaction) => {
      const id = await insertClass(transaction, title, intake, now());
      if (tutor !== null) await insertMember(transaction, id, tutor, 'tutor', now());
      return (await detail(transaction, id))!;
    }),

  list: (tutor: string | null): Promise<readonly ClassSummary[]> => classesOf(db, tutor),

  get: (id: string): Promise<ClassDetail | null> => detail(db, id),

  async change(id: string, { title, intake, joiningOpen, ended }: ClassChange): Promise<ClassDetail | null> {
    await db
      .updateTable('classes')
      .set({
        // So that there is something to set where nothing was asked for.
        id,
        ...(title === undefined ? {} : { title }),
        ...(intake === undefined ? {} : { intake }),
        ...(joiningOpen === undefined ? {} : { joining_open: joiningOpen ? 1 : 0 }),
        ...(ended === undefined ? {} : { ended_at: ended ? now() : null }),
      })
      .where('id', '=', id)
      .execute();
    return detail(db, id);
  },

  /** Another joining code; the one before no longer works. */
  async newCode(id: string): Promise<ClassDetail | null> {
    const taken = db.selectFrom('classes').select('id');
    for (;;) {
      const joining_code = newJoiningCode();
      if (await taken.where('joining_code', '=', joining_code).executeTakeFirst()) continue;
      await db.updateTable('classes').set({ joining_code }).where('id', '=', id).execute();
      return detail(db, id);
    }
  },

  ...membershipsOn(db, now),
});

export type Classes = ReturnType<typeof classesOn>;
