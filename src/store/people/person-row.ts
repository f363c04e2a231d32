/** People as they are kept, a row each. */
import type { Kysely, Selectable } from 'kysely';
import type { Person, PersonRole } from '../../../shared/people.ts';
import { newId } from '../new-id.ts';
import type { Tables } from '../schema.ts';
import type { PersonTable } from './tables.ts';

export interface NewPerson {
  readonly name: string;
  readonly role: PersonRole;
  readonly signIn?: string | null;
  readonly passwordHash?: string | null;
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
