/** Homework from the command line, from nothing to the marks of a class. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { text } from 'node:stream/consumers';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { setReport as setReportForm } from '../../shared/homework-views.ts';
import { barText, progressBar } from '../../src/cli/progress-bar.ts';
import { openSqliteStore, type Store, storeFile } from '../../src/store/index.ts';
import { commands } from '../../src/words/en/commands/index.ts';
import { builtPolewise } from '../support/built.ts';
import { type FakeOptions, type Ran, runCommand } from './fake-io.ts';

const root = mkdtempSync(join(tmpdir(), 'polewise-homework-commands-'));
afterAll(() => rmSync(root, { recursive: true, force: true }));

/** 2 March 2026, 09:00 UTC, where the commands' clock stands. */
const NOW = Date.UTC(2026, 2, 2, 9);

async function withStore<T>(use: (store: Store) => Promise<T>): Promise<T> {
  const store = await openSqliteStore(storeFile(root), { now: () => NOW });
  try {
    return await use(store);
  } finally {
    await store.close();
  }
}

const homework = (words: readonly string[], options: FakeOptions = {}): Promise<Ran> =>
  runCommand(['homework', ...words, '--data', root], { now: NOW, ...options });

const NEW = ['new', 'autumn', '--skill', 'changeover-legs', '--items', '2', '--level', 'small'];
const idIn = (out: string): string => /homework issue (\S+)/.exec(out)![1]!;

let classId: string;
beforeAll(() =>
  withStore(async (store) => {
    const made = await store.people.classes.make('Autumn fitters', null, null);
    classId = made.id;
    await store.people.classes.make('Spring fitters', null, null);
    for (const name of ['Ada Birch', 'Ben Cole']) {
      const person = (await store.people.persons.make({ name, role: 'learner' }))!;
      await store.people.joining.asKnown(made.joiningCode.replace('-', ''), person.id);
    }
  }),
);

describe('homework', () => {
  it('goes from nothing to issued in two commands, with a paper for everybody', async () => {
    const drafted = await homework([...NEW, '--title', 'Week 40', '--closes', '+7d']);
    expect(drafted).toMatchObject({ code: 0, err: '' });
    expect(drafted.out).toContain('Week 40: 2 items on changeover-legs.');
    const id = idIn(drafted.out);
    const sample = await homework(['sample', id]);
    expect(sample.out).toMatch(/1\. changeover-legs, of 1/);
    expect(await homework(['sample', id])).toEqual(sample);
    expect((await homework(['sample', id, '--number', '2'])).out).not.toBe(sample.out);
    const issued = await homework(['issue', 'week 40']);
    expect(issued).toMatchObject({ code: 0, out: expect.stringContaining('with 2 papers made') });
    expect((await homework(['list', classId])).out).toContain('open, until');
    const [, before = ''] = /It closes (.+)\./.exec(issued.out) ?? [];
    const later = await homework(['closing', id, '+1d']);
    expect(later).toMatchObject({ code: 0, out: expect.stringMatching(/^It closes /) });
    expect(later.out).not.toContain(before);
    expect((await homework(['closing', id, '2020-01-01'])).err).toContain('earlier');
    await withStore(async (store) => {
      expect((await store.homework.papersIn([id])).map(({ attempt }) => attempt)).toEqual([1, 1]);
    });
  });

  it('prints papers and key, takes marks by code, and reports', async () => {
    const id = idIn((await homework([...NEW, '--title', 'On paper', '--marks', '2'])).out);
    await homework(['issue', id]);
    const [out, key] = [join(root, 'papers.pdf'), join(root, 'key.pdf')];
    expect(await homework(['papers', id, '--out', out, '--key', key])).toMatchObject({ code: 0 });
    for (const file of [out, key]) expect(readFileSync(file).subarray(0, 5).toString()).toBe('%PDF-');
    const heads = await withStore((store) => store.homework.papersIn([id]));
    const [one, other] = heads.map(({ code }) => code);
    const grouped = `${one!.slice(0, 3)} ${one!.slice(3, 6)} ${one!.slice(6)}`;
    const marked = await homework(['mark', id, ...grouped.split(' '), '2', '-']);
    expect(marked.out).toMatch(/(Ada Birch|Ben Cole): 2 of 4/);
    const lines = join(root, 'marks.txt');
    writeFileSync(lines, `# week\n${other} 1.5 2\nLOSTCODE1 1 1\n${other} 9 9\n`);
    const taken = await homework(['mark', id, '--from', lines]);
    expect(taken.code).toBe(2);
    expect(taken.out).toContain('The marks of 1 paper are taken.');
    expect(taken.err).toContain(`${lines}:3: `);
    expect(taken.err).toContain(`${lines}:4: `);
    const typed = await homework(['mark', id], { lines: [`${one} x`, `${one} 1 1`, ''] });
    expect(typed.err).toContain('x: no mark.');
    expect(typed.out).toMatch(/: 2 of 4/);
    const report = await homework(['report', id]);
    expect(report.out).toContain('2 of 2 learners handed in.');
    expect(report.out).toMatch(/3\.5 of 4/);
    const json = await homework(['report', id, '--json']);
    expect(setReportForm.parse(JSON.parse(json.out)).report.handedIn).toBe(2);
    const marks = join(root, 'marks.csv');
    await homework(['export', id, marks]);
    expect(readFileSync(marks, 'utf8')).toContain('Ada Birch');
    const statements = join(root, 'statements.json');
    await homework(['export', id, statements, '--base', 'https://drawings.example/']);
    expect(readFileSync(statements, 'utf8')).toContain(`https://drawings.example/sets/${id}`);
    const zip = join(root, 'package.zip');
    expect(await homework(['export', id, zip, '--qti', '2.2'])).toMatchObject({ code: 0 });
    expect(existsSync(zip)).toBe(true);
  });

  it.each([
    [['new', 'winter', '--title', 'x', '--skill', 'seal-in'], 'There is no class winter'],
    [['new', 'fitters', '--title', 'x', '--skill', 'seal-in'], '2 classes that fitters could be'],
    [['new', 'autumn', '--title', 'x'], 'Nothing is asked'],
    [['new', 'autumn', '--title', 'x', '--skill', 'juggling'], 'There is no skill juggling'],
    [['new', 'autumn', '--title', 'x', '--topic', 'juggling'], 'There is no topic juggling'],
    [[...NEW, '--title', 'x', '--closes', 'soon'], '--closes soon: no time'],
    [[...NEW, '--title', 'x', '--closes', '2025-01-01'], 'closes before it opens'],
    [[...NEW, '--title', 'x', '--items', '90'], '--items 90'],
    [['issue', 'never'], 'There is no set never'],
    // There is a Week 40.
    [['issue', 'Week 4'], 'There is no set Week 4'],
    [['papers', 'week 40', '--out', 'papers.doc'], 'no name of a PDF'],
    [['mark', 'week 40', 'ABC', '1', '1'], 'code'],
    [['export', 'week 40', 'marks.xls'], 'neither .csv nor .json nor .zip'],
    [['export', 'week 40', 'statements.json'], '--base'],
    [['export', 'week 40', join(root, 'no', 'where', 'marks.csv')], "can't be written"],
  ])('refuses %j in words', async (words, told) => {
    const { code, err } = await homework(words);
    expect(code).toBe(2);
    expect(err).toContain(told);
    expect(err).not.toContain('A fault in polewise');
  });
});

describe('issuing that is stopped', () => {
  it('says that the set is issued, how many papers are made, and goes on when it is run again', async () => {
    const made = await withStore(async (store) => {
      const { id } = await store.people.classes.make('Ice works', null, null);
      await store.people.joining.byNames(id, ['Ann', 'Ben', 'Cleo', 'Dov']);
      return id;
    });
    const drafted = await homework(['new', made, ...NEW.slice(2), '--title', 'Stopped', '--closes', '+7d']);
    const id = idIn(drafted.out);
    const shown: string[] = [];
    let released = 0;
    // Ctrl-C comes before the first paper is whole.
    const stopped = await homework(['issue', id], {
      status: (text) => shown.push(text),
      whenStopped: (call) => {
        call();
        return () => released++;
      },
    });
    expect(stopped).toMatchObject({ code: 130, err: '' });
    expect(stopped.out).toMatch(/^The set is issued, and 1 of 4 papers are made\. It closes .*\n.*run again/);
    expect(released).toBe(1);
    expect(shown[0]).toMatch(/Papers made.*1 of 4/);
    const again = await homework(['issue', id]);
    expect(again).toMatchObject({ code: 0, out: expect.stringContaining('with 4 papers made') });
  });

  it('by Ctrl-C ends as a program of its own that has issued', async () => {
    const classId = await withStore(async (store) => {
      const { id } = await store.people.classes.make('Ramp', null, null);
      await store.people.joining.byNames(
        id,
        Array.from({ length: 300 }, (_, at) => `Learner ${at + 1}`),
      );
      return id;
    });
    // The program has the machine's clock.
    const closes = ['--closes', new Date(Date.now() + 86_400_000).toISOString().slice(0, 10)];
    const drafted = await homework(['new', classId, ...NEW.slice(2), '--title', 'Broken off', ...closes]);
    const id = idIn(drafted.out);
    const main = await builtPolewise();
    const child = spawn(process.execPath, [main, 'homework', 'issue', id, '--data', root], {
      env: { ...process.env, POLEWISE_ALONGSIDE: '1' },
    });
    const out = text(child.stdout);
    const ended = once(child, 'exit');
    await expect
      .poll(() => withStore(async (store) => (await store.homework.papersIn([id])).length))
      .toBeGreaterThan(0);
    child.kill('SIGINT');
    expect((await ended)[0]).toBe(130);
    const [, told] = /and (\d+) of 300 papers are made/.exec(await out)!;
    const kept = await withStore(async (store) => (await store.homework.papersIn([id])).length);
    expect(kept).toBe(Number(told));
    expect(kept).toBeLessThan(300);
  });
});

describe('a progress bar', () => {
  const bar = (done: number, total: number, columns: number): string =>
    barText(commands, { what: 'Papers made', done, total }, columns);

  it('grows in its line and never gets wider than the terminal', () => {
    for (const columns of [40, 80, 200])
      for (const [done, total] of [
        [0, 30],
        [15, 30],
        [30, 30],
        [0, 0],
      ] as const)
        expect(bar(done, total, columns).length).toBeLessThanOrEqual(columns);
    expect(bar(15, 30, 80)).toBe(`Papers made  [${'#'.repeat(20)}${'.'.repeat(20)}]  15 of 30`);
    expect(bar(3, 4, 20)).toBe('Papers made: 3 of 4');
    // One column stays free: a full line would go on in the next one.
    for (const columns of [10, 20, 40]) expect(bar(7, 1000, columns).length).toBeLessThan(columns);
    expect(bar(7, 300, 40)).toMatch(/\[#*\.+\]/);
  });

  it('is as wide as the place where it is shown, not as what is printed elsewhere', () => {
    const shown: string[] = [];
    const io = {
      words: commands,
      columns: 160,
      statusColumns: 40,
      status: (text: string) => shown.push(text),
    };
    progressBar(io as unknown as Parameters<typeof progressBar>[0], 'Papers made').show(1, 300);
    expect(shown[0]!.length).toBeLessThan(40);
  });

  it('shows what changes, and takes itself away', () => {
    const shown: string[] = [];
    const io = { words: commands, columns: 60, status: (text: string) => shown.push(text) };
    const bar = progressBar(io as unknown as Parameters<typeof progressBar>[0], 'Drawn');
    bar.show(1, 2);
    bar.show(1, 2);
    bar.show(2, 2);
    bar.end();
    bar.end();
    expect(shown).toHaveLength(3);
    expect(shown[1]).toContain('2 of 2');
    expect(shown[2]).toBe('');
  });
});
