import type { Kysely } from 'kysely';
import type { PersonExport } from '../../../shared/people.ts';
import type { Tables } from '../schema.ts';

/** What is kept about somebody as a person; null where nobody signs in under this id. */
export async function exportedPerson(db: Kysely<Tables>, id: string): Promise<PersonExport | null> {
  const row = await db
    .selectFrom('people')
    .select(['name', 'role', 'sign_in', 'created_at'])
    .where('id', '=', id)
    .executeTakeFirst();
  if (!row) return null;
  const classes = await db
    .selectFrom('memberships')
    .innerJoin('classes', 'classes.id', 'memberships.class')
    .select(['title', 'manner', 'joined_at as joinedAt'])
    .where('person', '=', id)
    .orderBy('joined_at')
    .execute();
  const sessions = await db
    .selectFrom('sessions')
    .select(['device', 'begun_at as begunAt', 'seen_at as seenAt'])
    .where('person', '=', id)
    .orderBy('begun_at')
    .execute();
  const link = await db.selectFrom('links').select('until').where('person', '=', id).executeTakeFirst();
  return {
    name: row.name,
    role: row.role,
    signIn: row.sign_in,
    createdAt: row.created_at,
    classes,
    sessions,
    linkUntil: link?.until ?? null,
  };
}
