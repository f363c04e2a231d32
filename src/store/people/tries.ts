import { type Kysely, sql } from 'kysely';
import type { Tables } from '../schema.ts';
import type { Installation } from './installation.ts';

/** Something of which there may be only so many in some time. */
export interface TryLimit {
  /** What is tried, and by whom: `sign-in|account|fern`. Only a keyed hash of it is kept. */
  readonly what: string;
  readonly most: number;
  /** Milliseconds. Times are counted from the full hour or its parts, the same on every server. */
  readonly within: number;
}

const DAY = 86_400_000;

async function count(db: Kysely<Tables>, key: string, from: number): Promise<number> {
  const { count } = await db
    .insertInto('tries')
    .values({ key, window_start: from, count: 1 })
    .onConflict((conflict) =>
      conflict.columns(['key', 'window_start']).doUpdateSet({ count: sql<number>`tries.count + 1` }),
    )
    .returning('count')
    .executeTakeFirstOrThrow();
  return count;
}

export function triesOn(db: Kysely<Tables>, installation: Installation, now: () => number) {
  const keyOf = async ({ what }: TryLimit): Promise<string> =>
    (await installation.keyed('tries', what)).toString('base64url');
  const windowOf = ({ within }: TryLimit): number => Math.floor(now() / within) * within;
  const secondsLeft = (limit: TryLimit): number =>
    Math.max(1, Math.ceil((windowOf(limit) + limit.within - now()) / 1000));
  return {
    /** Null when one more may be made, otherwise the seconds after which the next one may be. Counts nothing. */
    async wait(limit: TryLimit): Promise<number | null> {
      const row = await db
        .selectFrom('tries')
        .select('count')
        .where('key', '=', await keyOf(limit))
        .where('window_start', '=', windowOf(limit))
        .executeTakeFirst();
      return (row?.count ?? 0) < limit.most ? null : secondsLeft(limit);
    },
    /**
     * Counts one try. Done before it is made, many at once can't slip through.
     *
     * @returns null when it may be made, otherwise the seconds after which the next one may be
     */
    async take(limit: TryLimit): Promise<number | null> {
      const from = windowOf(limit);
      const made = await count(db, await keyOf(limit), from);
      // Whoever begins a new row takes the old ones out.
      if (made === 1)
        await db
          .deleteFrom('tries')
          .where('window_start', '<', now() - DAY)
          .execute();
      return made <= limit.most ? null : secondsLeft(limit);
    },
    /** Takes one back that turned out to be right: only wrong ones count. */
    async giveBack(limit: TryLimit): Promise<void> {
      await db
        .updateTable('tries')
        .set({ count: sql<number>`count - 1` })
        .where('key', '=', await keyOf(limit))
        .where('window_start', '=', windowOf(limit))
        .where('count', '>', 0)
        .execute();
    },
  };
}

export type Tries = ReturnType<typeof triesOn>;
