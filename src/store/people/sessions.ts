import type { Kysely } from 'kysely';
import type { PersonRole } from '../../../shared/people.ts';
import { newId } from '../new-id.ts';
import type { Tables } from '../schema.ts';
import { hashOf, newToken } from './secrets.ts';

const MINUTE = 60_000;
/** A session ends when it hasn't been used for this long. */
export const SESSION_LASTS = 30 * 24 * 60 * MINUTE;
/** How exactly it is known when a session was last used; finer would be a write for each request. */
const SEEN_WITHIN = 5 * MINUTE;

export interface SessionHolder {
  readonly session: string;
  readonly person: string;
  readonly role: PersonRole;
}

export interface SessionView {
  readonly id: string;
  readonly device: string;
  readonly begunAt: number;
  readonly seenAt: number;
}

/** Begins a session. The token goes to the browser and is kept nowhere. */
export async function beginSession(
  db: Kysely<Tables>,
  person: string,
  device: string,
  now: number,
): Promise<string> {
  const token = newToken();
  await db
    .insertInto('sessions')
    .values({
      token_hash: hashOf(token),
      id: newId(),
      person,
      begun_at: now,
      seen_at: now,
      until: now + SESSION_LASTS,
      device,
    })
    .execute();
  return token;
}

/** Ends all sessions of somebody, or all but one; gives how many. */
export async function endSessions(
  db: Kysely<Tables>,
  person: string,
  except: string | null = null,
): Promise<number> {
  let query = db.deleteFrom('sessions').where('person', '=', person);
  if (except !== null) query = query.where('id', '!=', except);
  const { numDeletedRows } = await query.executeTakeFirst();
  return Number(numDeletedRows);
}

export const sessionsOn = (db: Kysely<Tables>, now: () => number) => ({
  /** Begins a session, and clears out those that have ended. */
  async begin(person: string, device: string): Promise<string> {
    await db.deleteFrom('sessions').where('until', '<=', now()).execute();
    return beginSession(db, person, device, now());
  },

  /** Whose session a token is of, and notes that it was used; null when there is none, or it has ended. */
  async holderOf(token: string): Promise<SessionHolder | null> {
    const at = now();
    const row = await db
      .selectFrom('sessions')
      .innerJoin('people', 'people.id', 'sessions.person')
      .select(['sessions.id', 'sessions.person', 'sessions.seen_at', 'people.role'])
      .where('token_hash', '=', hashOf(token))
      .where('until', '>', at)
      .executeTakeFirst();
    if (!row) return null;
    if (at - row.seen_at > SEEN_WITHIN)
      await db
        .updateTable('sessions')
        .set({ seen_at: at, until: at + SESSION_LASTS })
        .where('id', '=', row.id)
        .execute();
    return { session: row.id, person: row.person, role: row.role };
  },

  /** Those of one person that haven't ended, the one used last first. */
  async list(person: string): Promise<readonly SessionView[]> {
    const rows = await db
      .selectFrom('sessions')
      .select(['id', 'device', 'begun_at', 'seen_at'])
      .where('person', '=', person)
      .where('until', '>', now())
      .orderBy('seen_at', 'desc')
      .orderBy('id')
      .execute();
    return rows.map(({ id, device, begun_at, seen_at }) => ({
      id,
      device,
      begunAt: begun_at,
      seenAt: seen_at,
    }));
  },

  /** Ends one session of this person; false when there is no such session of theirs. */
  async end(person: string, id: string): Promise<boolean> {
    const { numDeletedRows } = await db
      .deleteFrom('sessions')
      .where('person', '=', person)
      .where('id', '=', id)
      .executeTakeFirst();
    return numDeletedRows > 0n;
  },

  async endByToken(token: string): Promise<void> {
    await db.deleteFrom('sessions').where('token_hash', '=', hashOf(token)).execute();
  },

  endAll: (person: string, except: string | null = null): Promise<number> => endSessions(db, person, except),
});

export type Sessions = ReturnType<typeof sessionsOn>;
