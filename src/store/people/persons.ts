import { type Kysely, type Selectable, sql, type Transaction } from 'kysely';
import type { Person, PersonRole } from '../../../shared/people.ts';
import { newId } from '../new-id.ts';
import type { Tables } from '../schema.ts';
import { lockInstallation } from './installation.ts';
import { endSessions } from './sessions.ts';
import type { PersonTable } from './tables.ts';

export interface NewPerson {
  readonly name: string;
  readonly role: PersonRole;
  readonly signIn?: string | null;
  readonly passwordHash?: string | null;
}

export interface PeoplePage {
  readonly total: number;
  readonly people: readonly Person[];
}

export const PERSON_COLUMNS = [
  'people.id',
  'people.name',
  'people.role',
  'people.sign_in',
  'people.password_hash',
  'people.created_at',
] as const;

export const personIn = (row: Selectable<PersonTable>): Person => ({
  id: row.id,
  name: row.name,
  role: row.role,
  signIn: row.sign_in,
  hasPassword: row.password_hash !== null,
  createdAt: row.created_at,
});

/** Makes a person; null when somebody else signs in with that name. */
export async function insertPerson(
  db: Kysely<Tables>,
  { name, role, signIn = null, passwordHash = null }: NewPerson,
  now: number,
): Promise<Person | null> {
  const row = await db
    .insertInto('people')
    .values({ id: newId(), name, role, sign_in: signIn, password_hash: passwordHash, created_at: now })
    .onConflict((conflict) => conflict.column('sign_in').doNothing())
    .returningAll()
    .executeTakeFirst();
  return row ? personIn(row) : null;
}

/** Whether this is the only administrator. Only inside `lockInstallation` does it stay true. */
async function isLastAdmin(db: Transaction<Tables>, id: string): Promise<boolean> {
  const admins = await db.selectFrom('people').select('id').where('role', '=', 'admin').limit(2).execute();
  return admins.length === 1 && admins[0]?.id === id;
}

async function hasAdmin(db: Kysely<Tables>): Promise<boolean> {
  const found = await db
    .selectFrom('people')
    .select('id')
    .where('role', '=', 'admin')
    .limit(1)
    .executeTakeFirst();
  return found !== undefined;
}

/** Whether a database refused because a value that has to be unique is there already. */
const isTaken = (error: unknown): boolean =>
  error instanceof Error &&
  'code' in error &&
  (error.code === 'SQLITE_CONSTRAINT_UNIQUE' || error.code === '23505');

const like = (text: string): string => `%${text.toLowerCase().replace(/[\\%_]/g, (sign) => `\\${sign}`)}%`;

export const personsOn = (db: Kysely<Tables>, now: () => number) => ({
  make: (person: NewPerson): Promise<Person | null> => insertPerson(db, person, now()),
  hasAdmin: (): Promise<boolean> => hasAdmin(db),

  /** Makes the first administrator, of however many try at once; 'too-late' when there is one already. */
  makeFirstAdmin: (person: Omit<NewPerson, 'role'>): Promise<Person | 'name-taken' | 'too-late'> =>
    db.transaction().execute(async (transaction) => {
      await lockInstallation(transaction);
      if (await hasAdmin(transaction)) return 'too-late';
      return (await insertPerson(transaction, { ...person, role: 'admin' }, now())) ?? 'name-taken';
    }),

  async byId(id: string): Promise<Person | null> {
    const row = await db.selectFrom('people').selectAll().where('id', '=', id).executeTakeFirst();
    return row ? personIn(row) : null;
  },

  /** The one who signs in with this name, with the hash of the password. */
  async bySignIn(signIn: string): Promise<{ person: Person; passwordHash: string | null } | null> {
    const row = await db.selectFrom('people').selectAll().where('sign_in', '=', signIn).executeTakeFirst();
    return row ? { person: personIn(row), passwordHash: row.password_hash } : null;
  },

  async passwordHashOf(id: string): Promise<string | null> {
    const row = await db.selectFrom('people').select('password_hash').where('id', '=', id).executeTakeFirst();
    return row?.password_hash ?? null;
  },

  /**
   * Sets a password, and the name for signing in where one is given. Links and all sessions but the one named end.
   *
   * @returns false when somebody else signs in with that name; nothing is changed then
   */
  setPassword: (
    id: string,
    passwordHash: string,
    signIn: string | null,
    session: string | null,
  ): Promise<boolean> =>
    db
      .transaction()
      .execute(async (transaction) => {
        await transaction
          .updateTable('people')
          .set({ password_hash: passwordHash, ...(signIn === null ? {} : { sign_in: signIn }) })
          .where('id', '=', id)
          .execute();
        await transaction.deleteFrom('links').where('person', '=', id).execute();
        await endSessions(transaction, id, session);
        return true;
      })
      .catch((error: unknown) => {
        if (isTaken(error)) return false;
        throw error;
      }),

  async rename(id: string, name: string): Promise<Person | null> {
    const row = await db
      .updateTable('people')
      .set({ name })
      .where('id', '=', id)
      .returningAll()
      .executeTakeFirst();
    return row ? personIn(row) : null;
  },

  /** Changes what somebody may do; all their sessions and links end. Who no longer may be tutor is tutor of no class. */
  changeRole: (id: string, role: PersonRole): Promise<Person | 'last-admin' | null> =>
    db.transaction().execute(async (transaction) => {
      await lockInstallation(transaction);
      if (role !== 'admin' && (await isLastAdmin(transaction, id))) return 'last-admin';
      const row = await transaction
        .updateTable('people')
        .set({ role })
        .where('id', '=', id)
        .returningAll()
        .executeTakeFirst();
      if (!row) return null;
      await endSessions(transaction, id);
      await transaction.deleteFrom('links').where('person', '=', id).execute();
      if (role === 'learner')
        await transaction
          .deleteFrom('memberships')
          .where('person', '=', id)
          .where('manner', '=', 'tutor')
          .execute();
      return personIn(row);
    }),

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
});

export type Persons = ReturnType<typeof personsOn>;
