import { type Kysely, Migrator } from 'kysely';
import { noStore, StoreFailure } from './failures.ts';
import { migrations } from './migrations/index.ts';
import type { Tables } from './schema.ts';

export interface MigrateOptions {
  /** The last migration to run; all of them unless it is given. */
  readonly upTo?: string;
  /** Whether tables may be made where there are none; they may unless false is given. */
  readonly begins?: boolean;
}

/**
 * Brings the tables up to date.
 *
 * @throws StoreFailure when there are none and none may be made, or a later version made them
 */
export async function migrate(
  db: Kysely<Tables>,
  { upTo, begins = true }: MigrateOptions = {},
): Promise<void> {
  const migrator = new Migrator({ db, provider: { getMigrations: async () => migrations } });
  if (!begins && (await migrator.getMigrations()).every(({ executedAt }) => !executedAt)) throw noStore();
  const { error } = upTo ? await migrator.migrateTo(upTo) : await migrator.migrateToLatest();
  if (error instanceof Error && /^corrupted migrations/.test(error.message))
    throw new StoreFailure('store-from-later', { says: 'fromLater' }, error);
  if (error) throw error;
}
