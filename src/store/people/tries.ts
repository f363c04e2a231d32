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
    /** Counts one try. */
    async take(limit: TryLimit): Promise<void> {
      const { count } = await db
        .insertInto('tries')
        .values({ key: await keyOf(limit), window_start: windowOf(limit), count: 1 })
        .onConflict((conflict) =>
          conflict.columns(['key', 'window_start']).doUpdateSet({ count: sql<number>`tries.count + 1` }),
        )
        .returning('count')
        .executeTakeFirstOrThrow();
      // Whoever begins a new row takes the old ones out.
      if (count === 1)
        await db
          .deleteFrom('tries')
          .where('window_start', '<', now() - DAY)
          .execute();
    },
  };
}

export type Tries = ReturnType<typeof triesOn>;
