import type Database from 'better-sqlite3';
import { type DatabaseConnection, type Driver, SqliteDialect, SqliteDriver } from 'kysely';

/** Milliseconds of one turn of the program for which the connection is given out, before anything else has its turn. */
const LONGEST_TURN = 5;

/** SQLite's own ways: one connection, on the thread that asks, which gives up a transaction by itself when the disk is full. */
class KnowingDriver extends SqliteDriver {
  private readonly database: Database.Database;
  private taken = false;
  private readonly waiting: (() => void)[] = [];
  /** When the connection was first given out in this turn of the program; null when it wasn't yet. */
  private begun: number | null = null;

  constructor(database: Database.Database) {
    super({ database });
    this.database = database;
  }

  /**
   * In the order in which it is asked for. By itself it goes from hand to hand within one turn of the program, and every time all
   * who wait look whether it is free: beside 300 who sign in together anything else would wait until the last of them has had it.
   */
  override async acquireConnection(): Promise<DatabaseConnection> {
    if (this.taken || this.waiting.length > 0 || this.isLong())
      await new Promise<void>((go) => {
        this.waiting.push(go);
        this.goOn();
      });
    this.taken = true;
    return super.acquireConnection();
  }

  override async releaseConnection(): Promise<void> {
    await super.releaseConnection();
    this.taken = false;
    this.goOn();
  }

  private goOn(): void {
    if (this.taken || this.waiting.length === 0 || this.isLong()) return;
    this.taken = true;
    this.waiting.shift()!();
  }

  /** Whether this turn has been long enough; then it goes on in the next one. */
  private isLong(): boolean {
    if (this.begun !== null) return performance.now() - this.begun >= LONGEST_TURN;
    this.begun = performance.now();
    setImmediate(() => {
      this.begun = null;
      this.goOn();
    });
    return false;
  }

  /** Trying all the same where nothing is left to be rolled back would fail, and hide why the transaction did. */
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
