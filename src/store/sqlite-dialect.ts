import type Database from 'better-sqlite3';
import { type DatabaseConnection, type Driver, SqliteDialect, SqliteDriver } from 'kysely';

/** Where SQLite gave a transaction up by itself, as it does when the disk is full, nothing is left to be rolled back. */
class KnowingDriver extends SqliteDriver {
  private readonly database: Database.Database;

  constructor(database: Database.Database) {
    super({ database });
    this.database = database;
  }

  /** Trying all the same would fail, and hide why the transaction did. */
  override async rollbackTransaction(connection: DatabaseConnection): Promise<void> {
    if (this.database.inTransaction) await super.rollbackTransaction(connection);
  }
}

/** Kysely on one open SQLite database. */
export class OpenSqliteDialect extends SqliteDialect {
  private readonly database: Database.Database;

  constructor(database: Database.Database) {
    super({ database });
    this.database = database;
  }

  override createDriver(): Driver {
    return new KnowingDriver(this.database);
  }
}
