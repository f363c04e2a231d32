import type { Kysely, Transaction } from 'kysely';
import type { Person, PersonRole } from '../../../shared/people.ts';
import type { Tables } from '../schema.ts';
import { lockInstallation } from './installation.ts';
import { insertPerson, type NewPerson, personIn } from './person-row.ts';
import { endSessions } from './sessions.ts';

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

/** What people may do; there is always an administrator, once there has been one. */
export const rolesOn = (db: Kysely<Tables>, now: () => number) => ({
  hasAdmin: (): Promise<boolean> => hasAdmin(db),

  /** Makes the first administrator, of however many try at once; 'too-late' when there is one already. */
  makeFirstAdmin: (person: Omit<NewPerson, 'role'>): Promise<Person | 'name-taken' | 'too-late'> =>
    db.transaction().execute(async (transaction) => {
      await lockInstallation(transaction);
      if (await hasAdmin(transaction)) return 'too-late';
      return (await insertPerson(transaction, { ...person, role: 'admin' }, now())) ?? 'name-taken';
    }),

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
});
