/** The same suites on a real PostgreSQL. Where none can be started it fails and says so. */
import { Kysely, PostgresDialect } from 'kysely';
import pg from 'pg';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { failureOf, openPostgresStore } from '../../src/store/index.ts';
import type { Tables } from '../../src/store/schema.ts';
import { store as words } from '../../src/words/en/store.ts';
import { say } from '../../src/words/statement.ts';
import { answerWith, MORNING } from '../support/answers.ts';
import { startPostgres, type TestPostgres } from '../support/postgres.ts';
import { classesContract } from './classes-contract.ts';
import { homeworkContract, type Opened } from './homework-contract.ts';
import { peopleContract } from './people-contract.ts';
import { proofsContract } from './proofs-contract.ts';
import { type Database, storeContract } from './store-contract.ts';

let postgres: TestPostgres;
beforeAll(async () => {
  postgres = await startPostgres();
});
afterAll(() => postgres?.stop());

const database: Database = {
  fresh: async () => ({ kind: 'database', address: await postgres.fresh() }),
  tables: (place) => {
    if (place.kind !== 'database') throw new Error('These are databases.');
    return new Kysely<Tables>({
      dialect: new PostgresDialect({ pool: new pg.Pool({ connectionString: place.address }) }),
    });
  },
};
storeContract('PostgreSQL', database);
proofsContract('PostgreSQL', database);
peopleContract('PostgreSQL', { fresh: database.fresh, severally: true });
classesContract('PostgreSQL', database);

describe('homework in a store on PostgreSQL', () => {
  homeworkContract(async (now): Promise<Opened> => {
    const address = await postgres.fresh();
    // As two servers have it open.
    const stores = [await openPostgresStore(address, { now }), await openPostgresStore(address, { now })];
    return {
      stores,
      async close() {
        for (const store of stores) await store.close();
      },
    };
  });
});

describe('a store in PostgreSQL', () => {
  it('says in words that no database answers', async () => {
    const failure = await openPostgresStore('postgres://nobody@127.0.0.1:1/none').then(() => null, failureOf);
    expect(failure?.code).toBe('store-unreachable');
    expect(say(words.failures.right, failure!.said)).toContain('DATABASE_URL');
    await expect(openPostgresStore('postgres://')).rejects.toMatchObject({ code: 'store-unreachable' });
  });

  it('says in words that the name or the password is wrong', async () => {
    const address = (await postgres.fresh()).replace('only-for-tests', 'wrong');
    await expect(openPostgresStore(address)).rejects.toMatchObject({ code: 'store-unreachable' });
  });

  it('works again after its connections were cut', async () => {
    const address = await postgres.fresh();
    const store = await openPostgresStore(address);
    await store.keepAnswer(answerWith({ id: 'one', at: MORNING }));
    const other = new pg.Client({ connectionString: address });
    await other.connect();
    await other.query(
      'select pg_terminate_backend(pid) from pg_stat_activity where datname = current_database() and pid <> pg_backend_pid()',
    );
    await other.end();
    const second = answerWith({ id: 'two', at: MORNING });
    const tries = async (left: number): Promise<boolean> => {
      try {
        return await store.keepAnswer(second);
      } catch (error) {
        expect(failureOf(error)?.code).toBe('store-unreachable');
        if (left === 0) throw error;
        return tries(left - 1);
      }
    };
    expect(await tries(10)).toBe(true);
    expect(await store.answersOf('me')).toHaveLength(2);
    await store.close();
  });

  it('refers to its own tools for a backup', async () => {
    const store = await openPostgresStore(await postgres.fresh());
    await expect(store.backup('never')).rejects.toMatchObject({ said: { says: 'ownTools' } });
    expect(words.failures.right.ownTools).toContain('pg_dump');
    await store.close();
  });
});
