import type { Kysely } from 'kysely';
import type { Tables } from '../schema.ts';
import { hashOf, newToken } from './secrets.ts';
import { beginSession, endSessions } from './sessions.ts';

/** How long a link may wait to be used. */
export const LINK_LASTS = 7 * 86_400_000;

export interface MadeLink {
  readonly token: string;
  readonly until: number;
}

/** A link for somebody; the one before no longer works. The token is handed over and kept nowhere. */
export async function makeLink(db: Kysely<Tables>, person: string, now: number): Promise<MadeLink> {
  const token = newToken();
  const until = now + LINK_LASTS;
  const kept = { token_hash: hashOf(token), until };
  await db
    .insertInto('links')
    .values({ ...kept, person })
    .onConflict((conflict) => conflict.column('person').doUpdateSet(kept))
    .execute();
  return { token, until };
}

export const linksOn = (db: Kysely<Tables>, now: () => number) => ({
  make: (person: string): Promise<MadeLink> => makeLink(db, person, now()),

  /**
   * Uses a link, once: it is gone, and with it the password and the sessions that the person had, whoever used them.
   *
   * @returns the token of a session that begins; null when the link is unknown, used, replaced or too old
   */
  use: (token: string, device: string): Promise<string | null> =>
    db.transaction().execute(async (transaction) => {
      const at = now();
      const link = await transaction
        .deleteFrom('links')
        .where('token_hash', '=', hashOf(token))
        .returning(['person', 'until'])
        .executeTakeFirst();
      if (!link || link.until <= at) return null;
      await transaction
        .updateTable('people')
        .set({ password_hash: null })
        .where('id', '=', link.person)
        .execute();
      await endSessions(transaction, link.person);
      return beginSession(transaction, link.person, device, at);
    }),
});

export type Links = ReturnType<typeof linksOn>;
