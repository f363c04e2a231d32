/** A store in a folder of its own, whose clock is set by the test. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openSqliteStore, type Store, storeFile } from '../../../src/store/index.ts';

/** Some morning. */
const NOW = Date.UTC(2026, 8, 14, 6);

export interface Clock {
  now: number;
}

/** Does something with a store that nobody else has. */
export async function inStore(work: (store: Store, clock: Clock) => Promise<void>): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'polewise-people-'));
  const clock: Clock = { now: NOW };
  const store = await openSqliteStore(storeFile(folder), { now: () => clock.now });
  try {
    await work(store, clock);
  } finally {
    await store.close();
    rmSync(folder, { recursive: true, force: true });
  }
}
