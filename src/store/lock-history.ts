import type { Transaction } from 'kysely';
import { nanoid } from 'nanoid';
import type { HistoriesTable, Tables } from './schema.ts';
import { naming, type Whose } from './whose.ts';

/**
 * Begins the history of a learner, or takes it up, and keeps all other writers of it away until the transaction ends.
 * It has to be the first thing a transaction does: on SQLite it takes the place of the writer, so that nothing that is
 * read afterwards is out of date; on PostgreSQL it locks the learner's row. Whoever locks several does it in the
 * order of their names, so that no two wait for each other.
 *
 * @throws NoSuchPerson when it is a person's, and there is none: one who was erased meanwhile doesn't begin again
 */
export function lockHistory(
  db: Transaction<Tables>,
  learner: string,
  whose: Whose = 'anybody',
): Promise<HistoriesTable> {
  const person = whose === 'person' ? learner : null;
  return naming(
    db
      .insertInto('histories')
      .values({ learner, history: nanoid(), answers: 0, latest: 0, corrections: 0, person })
      .onConflict((conflict) =>
        conflict.column('learner').doUpdateSet(({ ref, fn }) => ({
          person: fn.coalesce(ref('excluded.person'), ref('histories.person')),
        })),
      )
      .returningAll()
      .executeTakeFirstOrThrow(),
  );
}
