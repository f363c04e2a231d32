/** Homework on SQLite; postgres.test.ts has the same on PostgreSQL. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe } from 'vitest';
import { openSqliteStore, storeFile } from '../../src/store/index.ts';
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
