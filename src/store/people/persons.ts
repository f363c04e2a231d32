import { type Kysely, sql } from 'kysely';
import type { Person } from '../../../shared/people.ts';
import type { Tables } from '../schema.ts';
import { insertPerson, type NewPerson, personIn } from './person-row.ts';
import { rolesOn } from './roles.ts';
import { signInsOn } from './sign-ins.ts';

export interface PeoplePage {
  readonly total: number;
  readonly people: readonly Person[];
}

const like = (text: string): string => `%${text.toLowerCase().replace(/[\\%_]/g, (sign) => `\\${sign}`)}%`;

export const personsOn = (db: Kysely<Tables>, now: () => number) => ({
  make: (person: NewPerson): Promise<Person | null> => insertPerson(db, person, now()),

  async byId(id: string): Promise<Person | null> {
    const row = await db.selectFrom('people').selectAll().where('id', '=', id).executeTakeFirst();
    return row ? personIn(row) : null;
  },

  async rename(id: string, name: string): Promise<Person | null> {
    const row = await db
      .updateTable('people')
      .set({ name })
      .where('id', '=', id)
      .returningAll()
      .executeTakeFirst();
    return row ? personIn(row) : null;
  },

  /** Everybody whose name, or name for signing in, has this text in it; by name. */
  async find(text: string, from: number, limit: number): Promise<PeoplePage> {
    const wanted = like(text);
    const found = db
      .selectFrom('people')
      .where(({ or, eb }) =>
        or([
          eb(sql`lower(name)`, 'like', sql`${wanted} escape '\\'`),
          eb('sign_in', 'like', sql<string>`${wanted} escape '\\'`),
        ]),
      );
    const { total } = await found
      .select(({ fn }) => fn.countAll<number>().as('total'))
      .executeTakeFirstOrThrow();
    const rows = await found.selectAll().orderBy('name').orderBy('id').offset(from).limit(limit).execute();
    return { total: Number(total), people: rows.map(personIn) };
  },

  ...signInsOn(db),
  ...rolesOn(db, now),
});

export type Persons = ReturnType<typeof personsOn>;
