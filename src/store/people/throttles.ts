/** Who tried wrongly waits before the next try, longer each time. Nobody is locked out, and nobody else has to wait for it. */
import { type Kysely, sql } from 'kysely';
import type { Tables } from '../schema.ts';
import type { Installation } from './installation.ts';

/** Wrong tries that nobody has to wait after: a slip of the finger, capitals, the password before. */
const FREE = 5;
/** Seconds to wait after the next one, doubling from the first to the last. */
const FIRST_WAIT = 1;
const LAST_WAIT = 15 * 60;
const HOUR = 3_600_000;
const DAY = 24 * HOUR;

/** Seconds to wait after so many wrong tries. */
export const waitAfter = (wrong: number): number =>
  wrong < FREE ? 0 : Math.min(LAST_WAIT, FIRST_WAIT * 2 ** Math.min(20, wrong - FREE));

/** Takes out those from which nothing follows any more. */
async function clearOut(db: Kysely<Tables>, at: number): Promise<void> {
  await db
    .deleteFrom('throttles')
    .where(({ or, and, eb }) =>
      or([
        eb('seen_at', '<', at - DAY),
        // Guesses at many things, each tried once: nothing follows from them for long.
        and([eb('wrong', '<=', 1), eb('seen_at', '<', at - HOUR)]),
      ]),
    )
    .execute();
}

export function throttlesOn(db: Kysely<Tables>, installation: Installation, now: () => number) {
  const keyOf = async (what: string): Promise<string> =>
    (await installation.keyed('throttle', what)).toString('base64url');
  return {
    /**
     * Takes one try, and counts it as wrong until it is told to be right: so many at once can't slip through.
     *
     * @param what - what is tried and by whom; only a keyed hash of it is kept
     * @param first - seconds that one who hasn't tried yet waits before the first try
     * @returns null when it is taken, otherwise the seconds to wait
     */
    async take(what: string, first = 0): Promise<number | null> {
      const key = await keyOf(what);
      const at = now();
      const { begun, seconds } = await db.transaction().execute(async (transaction) => {
        const row = await transaction
          .insertInto('throttles')
          .values({ key, wrong: 0, wait_until: at + first * 1000, seen_at: at })
          .onConflict((conflict) => conflict.column('key').doUpdateSet({ seen_at: at }))
          .returningAll()
          .executeTakeFirstOrThrow();
        const begun = row.wrong === 0;
        if (row.wait_until > at) return { begun, seconds: Math.ceil((row.wait_until - at) / 1000) };
        const wrong = row.wrong + 1;
        await transaction
          .updateTable('throttles')
          .set({ wrong, wait_until: at + waitAfter(wrong) * 1000 })
          .where('key', '=', key)
          .execute();
        return { begun, seconds: null };
      });
      // Whoever begins a row takes the old ones out.
      if (begun) await clearOut(db, at);
      return seconds;
    },
    /** It was right: nothing of before counts any more. */
    async right(what: string): Promise<void> {
      await db
        .deleteFrom('throttles')
        .where('key', '=', await keyOf(what))
        .execute();
    },
    /** It was neither: the server couldn't do it. */
    async giveBack(what: string): Promise<void> {
      await db
        .updateTable('throttles')
        .set({ wrong: sql<number>`wrong - 1`, wait_until: 0 })
        .where('key', '=', await keyOf(what))
        .where('wrong', '>', 0)
        .execute();
    },
  };
}

export type Throttles = ReturnType<typeof throttlesOn>;
