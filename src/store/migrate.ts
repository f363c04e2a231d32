import { type Kysely, Migrator } from 'kysely';
import { StoreFailure } from './failures.ts';
import { migrations } from './migrations/index.ts';
import type { Tables } from './schema.ts';

/**
 * Brings the tables up to date; throws when a migration fails.
 *
 * @param upTo - the last migration to run; all of them unless it is given
 */
export async function migrate(db: Kysely<Tables>, upTo?: string): Promise<void> {
  const migrator = new Migrator({ db, provider: { getMigrations: async () => migrations } });
  const { error } = upTo ? await migrator.migrateTo(upTo) : await migrator.migrateToLatest();
  if (error instanceof Error && /^corrupted migrations/.test(error.message))
    throw new StoreFailure(
      'store-from-later',
      'The store was last used by a later version of this program.',
      'Use that version, or put back a backup from before.',
      error,
    );
  if (error) throw error;
}
