/** Connections to PostgreSQL that outlive whatever happens to it: none is waited for too long, none is used again when it is lost. */
import type { PostgresPool, PostgresPoolClient } from 'kysely';
import pg from 'pg';

/** Counts and moments are 64 bit there and stay far below 2^53 here. */
const INT8 = 20;

const types = {
  getTypeParser: (oid: number, format?: 'text' | 'binary') =>
    oid === INT8 && format !== 'binary' ? Number : pg.types.getTypeParser(oid, format as 'text'),
};

/** Milliseconds after which the database gives up by itself; every statement here takes a fraction of it. */
const LIMITS = {
  /** Waiting for what somebody else has locked. */
  lock_timeout: 5_000,
  statement_timeout: 15_000,
  /** A transaction in which nothing is asked any more: its program has hung, and holds its locks. */
  idle_in_transaction_session_timeout: 30_000,
} as const;
/** After which one that says nothing at all, not even that it gave up, is as good as gone. */
const SILENCE = 20_000;
const CONNECTING = 5_000;

const usual = (address: string): pg.PoolConfig => ({
  connectionString: address,
  types,
  connectionTimeoutMillis: CONNECTING,
  keepAlive: true,
  application_name: 'polewise',
});

/** What pg says of a connection on which an answer never came; it would be used again, and the next one would wait as long. */
const isSilence = (error: unknown): boolean =>
  error instanceof Error && error.message === 'Query read timeout';

function careful(client: pg.PoolClient): PostgresPoolClient {
  let lost: unknown;
  const query = async (text: string, values: unknown[]): Promise<unknown> => {
    // Taking a transaction back on it would wait as long once more.
    if (lost) throw lost;
    try {
      return await client.query(text, values);
    } catch (error) {
      if (isSilence(error)) lost = error;
      throw error;
    }
  };
  return {
    query: query as PostgresPoolClient['query'],
    release: () => client.release(lost !== undefined),
  };
}

/** Ten connections at most, with limits for every statement. */
export function usualPool(address: string): PostgresPool {
  return poolOf({ ...usual(address), ...LIMITS, query_timeout: SILENCE, max: 10 });
}

/** One connection, for what takes as long as it takes: changing tables, clearing out. */
export function patientPool(address: string): PostgresPool {
  return poolOf({ ...usual(address), max: 1 });
}

function poolOf(config: pg.PoolConfig): PostgresPool {
  const pool = new pg.Pool(config);
  // A connection that breaks while nobody uses it is replaced by the next one that is wanted.
  pool.on('error', () => undefined);
  // One that breaks while it is used says so to whoever asked, and once more to whoever listens; if nobody did, it would end the
  // program.
  pool.on('connect', (client) => {
    client.on('error', () => undefined);
  });
  return { connect: async () => careful(await pool.connect()), end: () => pool.end() };
}
