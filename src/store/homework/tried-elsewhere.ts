import { type Kysely, sql } from 'kysely';
import type { TriedElsewhere, TriedPlace } from '../../../shared/homework.ts';
import { chunksOf } from '../chunks.ts';
import type { Tables } from '../schema.ts';

/** See `HomeworkStore.triedElsewhere`. */
export async function triedElsewhere(
  db: Kysely<Tables>,
  paper: string,
  item: number,
  place: TriedPlace,
  now: number,
): Promise<void> {
  await db
    .insertInto('tried_elsewhere')
    .values({ paper, item, place, first_at: now, last_at: now, times: 1 })
    .onConflict((conflict) =>
      conflict
        .columns(['paper', 'item', 'place'])
        .doUpdateSet({ last_at: now, times: sql<number>`tried_elsewhere.times + 1` }),
    )
    .execute();
}

/** See `HomeworkStore.triedIn`. */
export async function triedIn(
  db: Kysely<Tables>,
  papers: readonly string[],
): Promise<ReadonlyMap<string, readonly TriedElsewhere[]>> {
  const found = new Map<string, TriedElsewhere[]>();
  for (const some of chunksOf(papers, 500)) {
    const rows = await db
      .selectFrom('tried_elsewhere')
      .selectAll()
      .where('paper', 'in', some)
      .orderBy('item')
      .orderBy('first_at')
      .execute();
    for (const { paper, item, place, first_at, last_at, times } of rows) {
      const tried = { item, place, firstAt: first_at, lastAt: last_at, times };
      const known = found.get(paper);
      if (known) known.push(tried);
      else found.set(paper, [tried]);
    }
  }
  return found;
}
