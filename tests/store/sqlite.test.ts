import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { Kysely, SqliteDialect } from 'kysely';
import { afterAll, describe, expect, it } from 'vitest';
import { failureOf, openSqliteStore, openStore, storeFile } from '../../src/store/index.ts';
import type { Tables } from '../../src/store/schema.ts';
import { openSqliteFile } from '../../src/store/sqlite.ts';
import { store as words } from '../../src/words/en/store.ts';
import { say } from '../../src/words/statement.ts';
import { answerWith, MORNING } from '../support/answers.ts';
import { itInPrograms } from '../support/in-programs.ts';
import { writeAtOnce } from '../support/writers.ts';
import { proofsContract } from './proofs-contract.ts';
import { type Database as AnyDatabase, storeContract } from './store-contract.ts';

const folder = mkdtempSync(join(tmpdir(), 'polewise-store-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

let made = 0;
const freshFile = (): string => storeFile(join(folder, `${++made}`));

const database: AnyDatabase = {
  fresh: async () => ({ kind: 'file', file: freshFile() }),
  tables: (place) => {
    if (place.kind !== 'file') throw new Error('These are files.');
    const { file } = place;
    mkdirSync(dirname(file), { recursive: true });
    return new Kysely<Tables>({ dialect: new SqliteDialect({ database: new Database(file) }) });
  },
};
storeContract('SQLite', database);
proofsContract('SQLite', database);

/** Whether any file beside the store, itself included, has these letters in it. */
const isIn = (file: string, text: string): boolean =>
  readdirSync(join(file, '..')).some((name) => readFileSync(join(file, '..', name)).includes(text));

describe('a store in one file', () => {
  it('is set so that a power cut loses nothing that was acknowledged, and so that erased rows are overwritten', () => {
    const database = openSqliteFile(freshFile());
    const setting = (name: string): unknown => database.pragma(name, { simple: true });
    expect(setting('journal_mode')).toBe('wal');
    // https://www.sqlite.org/pragma.html#pragma_synchronous: 2 is FULL, a sync for each commit in WAL mode.
    expect(setting('synchronous')).toBe(2);
    expect(setting('secure_delete')).toBe(1);
    database.close();
  });

  it('lets others have their turn while much waits for it, in the order asked for', async () => {
    const store = await openSqliteStore(freshFile());
    const order: (number | 'other')[] = [];
    const asked = Array.from({ length: 300 }, async (_, at) => {
      await store.people.persons.make({ name: `Learner ${at}`, role: 'learner' });
      order.push(at);
    });
    setImmediate(() => order.push('other'));
    await Promise.all(asked);
    expect(order).toContain('other');
    expect(order.at(-1)).not.toBe('other');
    expect(order.filter((one) => one !== 'other')).toEqual(Array.from({ length: 300 }, (_, at) => at));
    await store.close();
  });

  it('has nothing of an erased learner in any of its files', async () => {
    const file = freshFile();
    const store = await openSqliteStore(file);
    const secret = 'orchid-house-secret';
    const records = Array.from({ length: 300 }, (_, at) => ({
      ...answerWith({ id: `a${at}`, at: MORNING + at, learner: 'fern', circuit: `${secret}-${at}` }),
    }));
    await store.keepAnswers(records);
    await store.keepAnswers(records.map((record) => ({ ...record, learner: 'moss', circuit: 'other' })));
    expect(isIn(file, secret)).toBe(true);
    await store.erase('fern');
    expect(isIn(file, secret)).toBe(false);
    expect(isIn(file, 'fern')).toBe(false);
    expect(await store.answersOf('moss')).toHaveLength(300);
    await store.close();
  });

  it('erases also while another program reads, and has nothing left when that has ended', async () => {
    const file = freshFile();
    const store = await openSqliteStore(file);
    await store.keepAnswer(answerWith({ id: 'one', at: MORNING, learner: 'bracken' }));
    const reader = new Database(file);
    reader.exec('BEGIN');
    expect(reader.prepare('select learner from answers').pluck().all()).toEqual(['bracken']);
    expect(await store.erase('bracken')).toEqual({ answers: 1 });
    expect(await store.learners()).toEqual([]);
    reader.exec('COMMIT');
    reader.close();
    await store.close();
    expect(isIn(file, 'bracken')).toBe(false);
  });

  it('leaves nothing of a copy that was stopped', async () => {
    const store = await openSqliteStore(freshFile());
    await store.keepAnswers(
      Array.from({ length: 2000 }, (_, at) => answerWith({ id: `a${at}`, at: MORNING + at })),
    );
    const there = readdirSync(folder).sort();
    const stopped = new AbortController();
    const steps: number[] = [];
    const copying = store.backup(
      join(folder, 'stopped.sqlite'),
      (done) => {
        steps.push(done);
        stopped.abort();
      },
      stopped.signal,
    );
    await expect(copying).rejects.toThrow(/abort/i);
    expect(steps).toHaveLength(1);
    expect(readdirSync(folder).sort()).toEqual(there);
    expect(await store.check()).toEqual([]);
    await store.close();
  });

  itInPrograms('is copied whole while another program writes into it', async () => {
    const file = freshFile();
    const copy = join(folder, 'copy.sqlite');
    const store = await openSqliteStore(file);
    await store.keepAnswers(
      Array.from({ length: 2000 }, (_, at) => answerWith({ id: `before-${at}`, at: MORNING + at })),
    );
    const ids = Array.from({ length: 300 }, (_, at) => `during-${at}`);
    const writing = writeAtOnce([{ place: { kind: 'file', file }, ids, learners: ['me'], batch: 1 }]);
    const steps: number[] = [];
    while ((await store.entriesAfter('me', 0, 1)).last < 2010) await new Promise((go) => setTimeout(go, 5));
    await store.backup(copy, (done) => steps.push(done));
    const { history: named } = await store.entriesAfter('me', 0, 1);
    await writing;
    await store.close();
    expect(steps.length).toBeGreaterThan(0);
    expect(existsSync(`${copy}.part`)).toBe(false);
    const restored = await openSqliteStore(copy);
    const { last, history } = await restored.entriesAfter('me', 0, 1);
    // So that devices send what came after the backup.
    expect(history).not.toBe(named);
    expect(last).toBeGreaterThanOrEqual(2010);
    expect(await restored.check()).toEqual([]);
    await restored.close();
  });

  it('never writes a backup over a file', async () => {
    const store = await openSqliteStore(freshFile());
    const there = join(folder, 'there');
    writeFileSync(there, 'mine');
    await expect(store.backup(there)).rejects.toMatchObject({ code: 'file-exists' });
    expect(readFileSync(there, 'utf8')).toBe('mine');
    await store.close();
  });

  it.each([
    [
      'a file that is no database',
      'not-a-store',
      () => {
        const file = join(folder, 'text.sqlite');
        writeFileSync(file, 'This is a shopping list and not a database. '.repeat(200));
        return file;
      },
    ],
    ['a folder', 'store-unreachable', () => folder],
    [
      'a place under a file',
      'store-unreachable',
      () => {
        const file = join(folder, 'a-file');
        writeFileSync(file, '');
        return join(file, 'practice.sqlite');
      },
    ],
  ])('says in words that %s is not a store', async (_, code, prepare) => {
    const failure = await openSqliteStore(prepare()).then(() => null, failureOf);
    expect(failure?.code).toBe(code);
    const { wrong, right } = words.failures;
    expect(say(wrong, failure!.said)).toMatch(/^\S.*\.$/);
    expect(say(right, failure!.said)).toMatch(/^\S.*\.$/);
  });

  it('refuses in words when another program holds it', async () => {
    const file = freshFile();
    const store = await openStore({ kind: 'file', file });
    const other = new Database(file);
    other.exec('BEGIN IMMEDIATE');
    const error: unknown = await store
      .keepAnswer(answerWith({ id: 'one', at: MORNING }))
      .catch((thrown) => thrown);
    expect(failureOf(error)).toMatchObject({ code: 'store-busy', said: { says: 'busy' } });
    other.exec('ROLLBACK');
    other.close();
    expect(await store.keepAnswer(answerWith({ id: 'one', at: MORNING }))).toBe(true);
    await store.close();
  });
});
