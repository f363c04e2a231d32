import { type Kysely, type Selectable, sql, type Transaction } from 'kysely';
import type { ClassDetail, ClassSummary, Manner, Member } from '../../../shared/people.ts';
import { newId } from '../new-id.ts';
import type { Tables } from '../schema.ts';
import { PERSON_COLUMNS, personIn } from './persons.ts';
import { newJoiningCode, shown } from './secrets.ts';
import type { ClassTable } from './tables.ts';

export interface ClassChange {
  readonly title?: string | undefined;
  readonly intake?: string | null | undefined;
  readonly joiningOpen?: boolean | undefined;
  readonly ended?: boolean | undefined;
}

const byName = new Intl.Collator('en', { numeric: true });

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

export async function learnersIn(db: Kysely<Tables>, id: string): Promise<number> {
  const { count } = await db
    .selectFrom('memberships')
    .select(({ fn }) => fn.countAll<number>().as('count'))
    .where('class', '=', id)
    .where('manner', '=', 'learner')
    .executeTakeFirstOrThrow();
  return Number(count);
}

/** Puts somebody into a class; false when they are in it already, in whatever manner. */
export async function insertMember(
  db: Kysely<Tables>,
  of: string,
  person: string,
  manner: Manner,
  now: number,
): Promise<boolean> {
  const row = await db
    .insertInto('memberships')
    .values({ class: of, person, manner, joined_at: now })
    .onConflict((conflict) => conflict.columns(['class', 'person']).doNothing())
    .returning('person')
    .executeTakeFirst();
  return row !== undefined;
}

/** Everybody in a class, by name. */
export async function membersOf(db: Kysely<Tables>, id: string): Promise<readonly Member[]> {
  const rows = await db
    .selectFrom('memberships')
    .innerJoin('people', 'people.id', 'memberships.person')
    .select([...PERSON_COLUMNS, 'manner', 'joined_at'])
    .where('class', '=', id)
    .execute();
  return rows
    .map((row): Member => ({ ...personIn(row), manner: row.manner, joinedAt: row.joined_at }))
    .sort((one, other) => byName.compare(one.name, other.name) || (one.id < other.id ? -1 : 1));
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

export const classesOn = (db: Kysely<Tables>, now: () => number) => ({
  /** Makes a class; the tutor, where one is named, is its first member. */
  make: (title: string, intake: string | null, tutor: string | null): Promise<ClassDetail> =>
    db.transaction().execute(async (transaction) => {
      const id = await insertClass(transaction, title, intake, now());
      if (tutor !== null) await insertMember(transaction, id, tutor, 'tutor', now());
      return (await detail(transaction, id))!;
    }),

  /** The classes of one tutor, or all of them; those that go on first, then by title. */
  async list(tutor: string | null): Promise<readonly ClassSummary[]> {
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
  },

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

  /** How somebody belongs to a class; null when not at all. */
  async mannerOf(id: string, person: string): Promise<Manner | null> {
    const row = await db
      .selectFrom('memberships')
      .select('manner')
      .where('class', '=', id)
      .where('person', '=', person)
      .executeTakeFirst();
    return row?.manner ?? null;
  },

  members: (id: string): Promise<readonly Member[]> => membersOf(db, id),

  /** The classes that somebody is in, by title. */
  async of(person: string): Promise<readonly { id: string; title: string; manner: Manner }[]> {
    const rows = await db
      .selectFrom('memberships')
      .innerJoin('classes', 'classes.id', 'memberships.class')
      .select(['classes.id', 'classes.title', 'manner'])
      .where('person', '=', person)
      .execute();
    return rows.sort((one, other) => byName.compare(one.title, other.title) || (one.id < other.id ? -1 : 1));
  },

  /** Whether one is a tutor of a class that the other is a learner of. */
  async teaches(tutor: string, learner: string): Promise<boolean> {
    const row = await db
      .selectFrom('memberships as tutoring')
      .innerJoin('memberships as learning', 'learning.class', 'tutoring.class')
      .select('learning.class')
      .where('tutoring.person', '=', tutor)
      .where('tutoring.manner', '=', 'tutor')
      .where('learning.person', '=', learner)
      .where('learning.manner', '=', 'learner')
      .limit(1)
      .executeTakeFirst();
    return row !== undefined;
  },

  /** Makes somebody tutor of a class, whatever they were in it before. */
  async addTutor(id: string, person: string): Promise<void> {
    await db
      .insertInto('memberships')
      .values({ class: id, person, manner: 'tutor', joined_at: now() })
      .onConflict((conflict) => conflict.columns(['class', 'person']).doUpdateSet({ manner: 'tutor' }))
      .execute();
  },

  /** Takes somebody out who is in the class in this manner; false when nobody is. */
  async remove(id: string, person: string, manner: Manner): Promise<boolean> {
    const { numDeletedRows } = await db
      .deleteFrom('memberships')
      .where('class', '=', id)
      .where('person', '=', person)
      .where('manner', '=', manner)
      .executeTakeFirst();
    return numDeletedRows > 0n;
  },
});

export type Classes = ReturnType<typeof classesOn>;
