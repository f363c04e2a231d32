import { mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import Database from 'better-sqlite3';
import { Kysely, SqliteDialect } from 'kysely';
import { KyselyStore, migrate } from './kysely-store.ts';
import type { Tables } from './schema.ts';
import type { Store } from './types.ts';

/**
 * Opens (or begins) the store in one file. Several programs may have it open; each waits up to five seconds for another.
 * What has been kept survives a power cut.
 *
 * @param file - path of the database, or `:memory:`; its folder is made when it isn't there
 * @throws when the file can't be opened or isn't a store
 */
export async function openSqliteStore(file: string): Promise<Store> {
  if (file !== ':memory:') mkdirSync(dirname(file), { recursive: true });
  const database = new Database(file, { timeout: 5000 });
  try {
    database.pragma('journal_mode = WAL');
    database.pragma('synchronous = FULL');
    database.pragma('foreign_keys = ON');
    const db = new Kysely<Tables>({ dialect: new SqliteDialect({ database }) });
    await migrate(db);
    return new KyselyStore(db);
  } catch (error) {
    database.close();
    throw error;
  }
}
