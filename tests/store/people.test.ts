/** People on SQLite; postgres.test.ts has the same on PostgreSQL. */
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { openSqliteStore, storeFile } from '../../src/store/index.ts';
import { classesContract } from './classes-contract.ts';
import { peopleContract } from './people-contract.ts';

const folder = mkdtempSync(join(tmpdir(), 'polewise-people-'));
let made = 0;
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const fresh = async () => ({ kind: 'file', file: storeFile(join(folder, `${++made}`)) }) as const;
peopleContract('SQLite', { fresh, severally: false });
classesContract('SQLite', { fresh });

it('a copy of a SQLite store lets nobody in who was signed in, and knows everybody', async () => {
  const store = await openSqliteStore(storeFile(join(folder, 'copied')));
  const { id } = (await store.people.persons.make({ name: 'Fern', role: 'learner' }))!;
  const session = await store.people.sessions.begin(id, 'a browser');
  const link = await store.people.links.make(id);
  const copy = join(folder, 'copy.sqlite');
  await store.backup(copy);
  expect(await store.people.sessions.holderOf(session)).not.toBeNull();
  await store.close();
  expect(existsSync(copy)).toBe(true);
  const restored = await openSqliteStore(copy);
  expect(await restored.people.persons.byId(id)).toMatchObject({ name: 'Fern' });
  expect(await restored.people.sessions.holderOf(session)).toBeNull();
  expect(await restored.people.links.use(link.token, 'a browser')).toBeNull();
  await restored.close();
});
