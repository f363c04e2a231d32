import { existsSync, mkdirSync, statSync } from 'node:fs';
import { dirname } from 'node:path';
import Database from 'better-sqlite3';
import { Kysely } from 'kysely';
import type { Backend } from './backend.ts';
import { failureOf, noStore, type StoreFailure } from './failures.ts';
import { KyselyStore } from './kysely-store.ts';
import { migrate } from './migrate.ts';
import type { Tables } from './schema.ts';
import { backupSqlite } from './sqlite-backup.ts';
import { OpenSqliteDialect } from './sqlite-dialect.ts';
import type { Store } from './types.ts';

export interface StoreOptions {
  /** Milliseconds since 1970; the machine's clock unless it is given. */
  readonly now?: () => number;
  /** Whether a store may be begun where there is none; it may unless false is given. */
  readonly begins?: boolean;
  /** Told once when the database is away; then it is waited for, for as long as it takes. It is refused otherwise. */
  readonly onAway?: (failure: StoreFailure) => void;
}

/** Milliseconds that a program waits for another one that is writing. */
const WAIT = 5000;

/** Writes the journal back and empties it; false when another program still reads from it. Nobody waits long for it. */
function emptyJournal(database: Database.Database): boolean {
  database.pragma('busy_timeout = 50');
  try {
    const [result] = database.pragma('wal_checkpoint(TRUNCATE)') as { busy: number }[];
    return result?.busy === 0;
  } finally {
    database.pragma(`busy_timeout = ${WAIT}`);
  }
}

function sqliteBackend(database: Database.Database): Backend {
  return {
    kind: 'sqlite',
    async afterErase() {
      // Erased rows are overwritten in the database itself (secure_delete); the journal still holds them as they were.
      for (let tries = 0; tries < 5; tries++) {
        if (emptyJournal(database)) return;
        await new Promise((resolve) => setTimeout(resolve, 200));
      }
    },
    async structureFaults() {
      const rows = database.pragma('integrity_check') as { integrity_check: string }[];
      return rows.map(({ integrity_check }) => integrity_check).filter((text) => text !== 'ok');
    },
    backup: (file, progress, signal) => backupSqlite(database.name, file, progress, signal),
  };
}

/**
 * Makes a folder and those above it, one at a time: where none can be made (under /proc) Node's own recursive way never
 * comes back.
 */
function makeFolder(folder: string): void {
  if (existsSync(folder)) return;
  makeFolder(dirname(folder));
  try {
    mkdirSync(folder);
  } catch (error) {
    // Another program that begins the store has made it meanwhile.
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST' || !existsSync(folder)) throw error;
  }
}

/** Opens or makes the file, set so that what is committed survives a power cut and what is deleted is overwritten. */
export function openSqliteFile(file: string): Database.Database {
  if (file !== ':memory:') makeFolder(dirname(file));
  const database = new Database(file, { timeout: WAIT });
  try {
    database.pragma('journal_mode = WAL');
    database.pragma('synchronous = FULL');
    database.pragma('secure_delete = ON');
    return database;
  } catch (error) {
    database.close();
    throw error;
  }
}

/** How long between two tries to open a file that another program is just beginning. */
const AGAIN_AFTER = 25;

/**
 * Opens the file as `openSqliteFile` does, within the same patience. Changing to the write-ahead journal needs the file for
 * itself, and SQLite refuses that at once, without waiting, when two programs begin a store together.
 */
async function openPatiently(file: string): Promise<Database.Database> {
  const until = Date.now() + WAIT;
  for (;;) {
    try {
      return openSqliteFile(file);
    } catch (error) {
      const busy = error instanceof Database.SqliteError && error.code.startsWith('SQLITE_BUSY');
      if (!busy || Date.now() >= until) throw error;
      await new Promise((resolve) => setTimeout(resolve, AGAIN_AFTER));
    }
  }
}

/** All migrations or none, and one program at a time: two that begin a store together don't get in each other's way. */
async function migrateAlone(database: Database.Database, db: Kysely<Tables>, begins: boolean): Promise<void> {
  database.exec('BEGIN IMMEDIATE');
  try {
    await migrate(db, { begins });
    database.exec('COMMIT');
  } catch (error) {
    if (database.inTransaction) database.exec('ROLLBACK');
    throw error;
  }
}

/** Not there, or an empty file, which opening would make a database of. */
const isNothing = (file: string): boolean => !statSync(file, { throwIfNoEntry: false })?.size;

/**
 * Opens (or begins) the store in one file. Several programs may have it open; each waits up to five seconds for another.
 * What has been kept survives a power cut.
 *
 * @param file - path of the database, or `:memory:`; its folder is made when it isn't there
 * @throws StoreFailure when the file can't be opened or isn't a store
 */
export async function openSqliteStore(file: string, options: StoreOptions = {}): Promise<Store> {
  const { begins = true } = options;
  let database: Database.Database | undefined;
  try {
    if (!begins && isNothing(file)) throw noStore();
    database = await openPatiently(file);
    const db = new Kysely<Tables>({ dialect: new OpenSqliteDialect(database) });
    await migrateAlone(database, db, begins);
    return new KyselyStore(db, sqliteBackend(database), options.now ?? Date.now);
  } catch (error) {
    database?.close();
    throw failureOf(error) ?? error;
  }
}
