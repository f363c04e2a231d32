import type { Kysely } from 'kysely';
import type { Person } from '../../../shared/people.ts';
import type { Tables } from '../schema.ts';
import { personIn } from './person-row.ts';
import { endSessions } from './sessions.ts';

/** Whether a database refused because a value that has to be unique is there already. */
const isTaken = (error: unknown): boolean =>
  error instanceof Error &&
  'code' in error &&
  (error.code === 'SQLITE_CONSTRAINT_UNIQUE' || error.code === '23505');

/** How people sign in: by which name, and with which password. */
export const signInsOn = (db: Kysely<Tables>) => ({
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
});
