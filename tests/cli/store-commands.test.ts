import { execFileSync } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { Command } from 'commander';
import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import { learnerExport } from '../../shared/api.ts';
import { addBackup } from '../../src/cli/commands/backup.command.ts';
import { addClass } from '../../src/cli/commands/class/class.command.ts';
import { addHomework } from '../../src/cli/commands/homework/homework.command.ts';
import { addLearner } from '../../src/cli/commands/learner.command.ts';
import { addRebuild } from '../../src/cli/commands/rebuild.command.ts';
import type { Io } from '../../src/cli/io.ts';
import { runProgram } from '../../src/cli/program.ts';
import { askQuestion, markAnswer, rightAnswer } from '../../src/questions/index.ts';
import { openSqliteStore, storeFile } from '../../src/store/index.ts';
import { openSqliteFile } from '../../src/store/sqlite.ts';
import { commands } from '../../src/words/en/commands/index.ts';
import { answerWith, MORNING } from '../support/answers.ts';
import { builtPolewise } from '../support/built.ts';
import { NEVER_COMES } from '../support/hanging.ts';

const root = mkdtempSync(join(tmpdir(), 'polewise-commands-'));
afterAll(() => rmSync(root, { recursive: true, force: true }));
let made = 0;
let data: string;
beforeEach(() => {
  data = join(root, `${++made}`);
});

/** Runs one of the store's commands. */
async function run(
  words: readonly string[],
  { typed, environment = {} }: { typed?: string; environment?: Record<string, string> } = {},
): Promise<{ code: number; out: string; err: string }> {
  let out = '';
  let err = '';
  const io: Io = {
    language: 'en',
    words: commands,
    out: (text) => {
      out += `${text}\n`;
    },
    err: (text) => {
      err += `${text}\n`;
    },
    read: async (file) => readFileSync(file),
    writeFile: () => undefined,
    question: async () => typed,
    columns: 80,
    colour: false,
    interactive: typed !== undefined,
    now: () => MORNING + 1000,
    freshSeed: () => 'seed',
    environment: { POLEWISE_DATA: data, ...environment },
    home: root,
  };
  const running = { code: 0 };
  const command = new Command('polewise').exitOverride().configureOutput({
    writeOut: (text) => io.out(text),
    writeErr: (text) => io.err(text),
  });
  for (const add of [addBackup, addRebuild, addLearner, addClass, addHomework]) add(command, io, running);
  const code = await runProgram({ command, running }, words, io);
  return { code, out, err };
}

const keep = async (ids: readonly string[], learner = 'me'): Promise<void> => {
  const store = await openSqliteStore(storeFile(data), { now: () => MORNING });
  await store.keepAnswers(ids.map((id, at) => answerWith({ id, at: MORNING - 1000 + at, learner })));
  await store.close();
};

describe('backup', () => {
  it('makes one file with everything in it', async () => {
    await keep(['a', 'b']);
    const file = join(root, 'copy.sqlite');
    expect(await run(['backup', file])).toMatchObject({ code: 0, out: expect.stringContaining(file) });
    const copy = await openSqliteStore(file);
    expect((await copy.answersOf('me')).map(({ id }) => id)).toEqual(['a', 'b']);
    await copy.close();
  });

  it('refuses a file that is there, a place that is none, and a PostgreSQL store', async () => {
    await keep(['a']);
    const there = join(root, 'there.sqlite');
    writeFileSync(there, 'mine');
    expect(await run(['backup', there])).toMatchObject({ code: 2, err: expect.stringContaining('already') });
    expect(readFileSync(there, 'utf8')).toBe('mine');
    const nowhere = await run(['backup', join(root, 'no', 'folder', 'x.sqlite')]);
    expect(nowhere).toMatchObject({ code: 2, err: expect.stringContaining('no folder') });
    // What is wrong with the target isn't said of the store.
    writeFileSync(join(root, 'no-folder'), '');
    const under = join(root, 'no-folder', 'x.sqlite');
    const unwritable = await run(['backup', under]);
    expect(unwritable).toMatchObject({
      code: 2,
      out: '',
      err: expect.stringContaining(`${under} can't be written`),
    });
    expect(unwritable.err).not.toContain('practice.sqlite');
    const database = await run(['backup', 'x'], { environment: { DATABASE_URL: 'postgres://x' } });
    expect(database).toMatchObject({ code: 2, err: expect.stringContaining('pg_dump') });
  });
});

describe('rebuild', () => {
  it('works out anew what is remembered, and finds nothing wrong afterwards', async () => {
    await keep(['a', 'b']);
    const file = openSqliteFile(storeFile(data));
    file.exec('delete from recalls');
    file.close();
    const found = await run(['rebuild', '--check']);
    expect(found).toMatchObject({ code: 1, out: expect.stringContaining('1 fault') });
    expect(found.err).toContain('changeover');
    expect(await run(['rebuild'])).toMatchObject({
      code: 0,
      out: expect.stringContaining('2 answers of 1 learner'),
    });
    expect(await run(['rebuild', '--check'])).toMatchObject({ code: 0, err: '' });
  });

  it('lets devices send again what they have after a backup was put back', async () => {
    await keep(['a']);
    const named = async () => {
      const store = await openSqliteStore(storeFile(data));
      const { history } = await store.entriesAfter('me', 0, 1);
      await store.close();
      return history;
    };
    const before = await named();
    expect((await run(['rebuild'])).code).toBe(0);
    expect(await named()).toBe(before);
    expect((await run(['rebuild', '--restored'])).code).toBe(0);
    expect(await named()).not.toBe(before);
  });

  it('marks again with the solver and keeps the first mark beside the new one', async () => {
    const record = answerWith({ id: 'a', at: MORNING });
    const right = { ...record, answer: rightAnswer(record.question) };
    expect(askQuestion(record.question).items.map(({ item }) => item)).toEqual(['-H1', '-H2']);
    const forged = { ...right, id: 'b', mark: { ...record.mark, share: 0, correct: false } };
    const store = await openSqliteStore(storeFile(data));
    const { mark } = markAnswer(right.question, right.answer);
    await store.keepAnswers([
      { ...right, mark },
      { ...forged, attempt: { ...forged.attempt, share: 0 } },
    ]);
    await store.close();
    const { code, out } = await run(['rebuild', '--marks']);
    expect(code).toBe(0);
    expect(out).toContain('me: answer 2 (b) has another mark');
    expect(out).toContain('2 answers marked again, 1 otherwise');
    const again = await openSqliteStore(storeFile(data));
    const { entries } = await again.entriesAfter('me', 0, 5);
    expect(entries[1]).toMatchObject({
      record: { mark: { share: 0 } },
      correctedMark: { share: 1, correct: true },
    });
    expect((await again.recallsOf('me')).get('changeover')).toMatchObject({ reviews: 2, lapses: 0 });
    await again.close();
    expect((await run(['rebuild', '--marks'])).out).toContain('0 otherwise');
  });
});

describe('learner', () => {
  it('lists everyone', async () => {
    await keep([]);
    expect((await run(['learner', 'list'])).out).toContain('Nothing is kept');
    await keep(['a']);
    await keep(['a', 'b'], 'fern');
    expect((await run(['learner', 'list'])).out).toBe('fern: 2 answers\nme: 1 answer\n');
  });

  it('is exported to the terminal or into a new file', async () => {
    await keep(['a', 'b']);
    const printed = await run(['learner', 'export']);
    expect(learnerExport.parse(JSON.parse(printed.out)).answers).toHaveLength(2);
    const file = join(root, 'mine.json');
    expect((await run(['learner', 'export', 'me', '--out', file])).code).toBe(0);
    expect(JSON.parse(readFileSync(file, 'utf8'))).toEqual(JSON.parse(printed.out));
    expect(await run(['learner', 'export', '--out', file])).toMatchObject({ code: 2 });
    expect(await run(['learner', 'export', '--out', join(root, 'no', 'where')])).toMatchObject({ code: 2 });
    expect(await run(['learner', 'export', 'fern'])).toMatchObject({
      code: 2,
      err: expect.stringContaining('Nothing is kept of fern'),
    });
  });

  it('is erased when that was confirmed', async () => {
    await keep(['a']);
    expect(await run(['learner', 'erase', 'me'])).toMatchObject({
      code: 2,
      err: expect.stringContaining('--yes'),
    });
    expect((await run(['learner', 'erase', 'me'], { typed: 'no' })).out).toContain('Nothing was erased');
    expect((await run(['learner', 'list'])).out).toBe('me: 1 answer\n');
    expect((await run(['learner', 'erase', 'me'], { typed: 'me' })).out).toContain('gone: 1 answer');
    await keep(['a']);
    expect((await run(['learner', 'erase', 'me', '--yes'])).code).toBe(0);
    expect((await run(['learner', 'list'])).out).toContain('Nothing is kept');
  });
});

describe('any of them', () => {
  const none = { code: 2, out: '', err: expect.stringContaining('There is no store here.') };

  it.each([
    ['backup', join(root, 'nightly.sqlite')],
    ['rebuild'],
    ['rebuild', '--check'],
    ['rebuild', '--marks', '--restored'],
    ['learner', 'list'],
    ['learner', 'export'],
    ['learner', 'erase', 'me', '--yes'],
    ['class', 'list'],
    ['class', 'show', 'Flour line'],
    ['class', 'add', 'Flour line', 'Ann'],
    ['homework', 'list', 'Flour line'],
    ['homework', 'issue', 'Week 40'],
    ['homework', 'report', 'Week 40'],
  ])('refuses a place where there is no store, and makes none: %s %s', async (...words) => {
    expect(await run(words)).toMatchObject(none);
    expect(existsSync(data)).toBe(false);
    // Neither of an empty file, which is what a copy that failed leaves.
    mkdirSync(data);
    writeFileSync(storeFile(data), '');
    expect(await run(words)).toMatchObject(none);
    expect(readdirSync(data)).toEqual(['practice.sqlite']);
    expect(statSync(storeFile(data)).size).toBe(0);
    // Nor of a database of something else.
    const other = new Database(storeFile(data));
    other.exec('create table plants (name text)');
    other.close();
    expect(await run(words)).toMatchObject(none);
    expect(existsSync(join(root, 'nightly.sqlite'))).toBe(false);
  });

  it('begins one where something begins', async () => {
    expect((await run(['class', 'new', 'Flour line'])).code).toBe(0);
    expect((await run(['class', 'list'])).out).toContain('Flour line');
  });

  it('comes back from a place where no folder can be made', async () => {
    const child = execFileSync.bind(null, process.execPath);
    const main = await builtPolewise();
    for (const words of [['rebuild'], ['class', 'new', 'x'], ['drill', '--count', '1']])
      expect(() =>
        child([main, ...words, '--data', '/proc/polewise'], {
          stdio: ['ignore', 'pipe', 'pipe'],
          timeout: NEVER_COMES,
        }),
      ).toThrow(/\/proc\/polewise\/practice\.sqlite: /);
  });

  it('takes the folder that --data names', async () => {
    await keep(['a']);
    expect(
      (await run(['learner', 'list', '--data', data], { environment: { POLEWISE_DATA: root } })).out,
    ).toBe('me: 1 answer\n');
    expect(existsSync(join(root, 'practice.sqlite'))).toBe(false);
  });

  it('says what is wrong with a store that it can not open', async () => {
    writeFileSync(join(root, 'a-file'), '');
    const { code, err } = await run(['rebuild', '--data', join(root, 'a-file')]);
    expect(code).toBe(2);
    expect(err).toContain('is a file.');
    const both = await run(['rebuild', '--data', data], { environment: { DATABASE_URL: 'postgres://x' } });
    expect(both).toMatchObject({ code: 2, err: expect.stringContaining('two different stores') });
  });
});
