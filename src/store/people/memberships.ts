/** Who is in which class, and in which manner. */
import type { Kysely } from 'kysely';
import type { Manner, Member } from '../../../shared/people.ts';
import type { Tables } from '../schema.ts';
import { PERSON_COLUMNS, personIn } from './person-row.ts';

export const byName = new Intl.Collator('en', { numeric: true });

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

export const membershipsOn = (db: Kysely<Tables>, now: () => number) => ({
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
