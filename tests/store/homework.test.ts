/** Homework on both databases. Where no PostgreSQL can be started those tests fail and say so. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe } from 'vitest';
import { openPostgresStore, openSqliteStore, storeFile } from '../../src/store/index.ts';
import { startPostgres, type TestPostgres } from '../support/postgres.ts';
import { homeworkContract, type Opened } from './homework-contract.ts';

describe('homework in a store on SQLite', () => {
  const folder = mkdtempSync(join(tmpdir(), 'polewise-homework-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  let made = 0;
  homeworkContract(async (now): Promise<Opened> => {
    const store = await openSqliteStore(storeFile(join(folder, `${++made}`)), { now });
    return { stores: [store], close: () => store.close() };
  });
});

describe('homework in a store on PostgreSQL', () => {
  let postgres: TestPostgres;
  beforeAll(async () => {
    postgres = await startPostgres();
  });
  afterAll(() => postgres?.stop());
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
