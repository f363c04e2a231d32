import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { unzipSync } from 'fflate';
import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import { openSqliteStore, type Store, storeFile } from '../../src/store/index.ts';
import { answerWith } from '../support/answers.ts';
import { runCommand } from './fake-io.ts';

const root = mkdtempSync(join(tmpdir(), 'polewise-class-commands-'));
afterAll(() => rmSync(root, { recursive: true, force: true }));
let made = 0;
let data: string;
beforeEach(() => {
  data = join(root, `${++made}`);
  mkdirSync(data);
});
const NOW = Date.UTC(2026, 2, 2, 9);

/** Runs a command that has to end well and gives what it printed. */
async function ran(...words: readonly string[]): Promise<string> {
  const { code, out, err } = await runCommand(['class', ...words, '--data', data], { now: NOW });
  expect([err, code]).toEqual(['', 0]);
  return out;
}
async function refused(...words: readonly string[]): Promise<string> {
  const { code, err } = await runCommand(['class', ...words, '--data', data], { now: NOW });
  expect(code).toBe(2);
  return err;
}
async function inStore<T>(use: (store: Store) => Promise<T>): Promise<T> {
  const store = await openSqliteStore(storeFile(data), { now: () => NOW });
  try {
    return await use(store);
  } finally {
    await store.close();
  }
}
const codeIn = (text: string): string => /\b\w{4}-\w{4}\b/.exec(text)![0];

describe('polewise class', () => {
  it('makes classes, and names them with who is in them', async () => {
    expect(await refused('list')).toContain('There is no store here');
    await inStore(async () => undefined);
    expect(await ran('list')).toContain('There is no class yet');
    const out = await ran('new', 'Flour line', '--intake', 'Autumn 2026');
    const code = codeIn(out);
    expect(await ran('list')).toMatch(/^Flour line \([\w-]+\): 0 learners, Autumn 2026\n$/);
    expect(await ran('show', 'flour line')).toContain(`code ${code}, may be joined.\n  Nobody is in it yet.`);
    expect(await refused('show', 'Ice works')).toContain('There is no class Ice works.');
    await ran('new', 'Flour line');
    expect(await refused('show', 'Flour line')).toContain('There are 2 classes that Flour line could be');
    expect(await refused('new', ' ')).toContain("A title can't be");
  });

  it('adds learners with links that let in', async () => {
    await ran('new', 'Flour line');
    writeFileSync(join(data, 'names.txt'), 'Mika Ferro\r\n\r\nAnn Ort\n');
    const out = await ran(
      'add',
      'Flour line',
      'Fern Moss',
      '--from',
      join(data, 'names.txt'),
      '--address',
      'https://practice.example/',
    );
    const links = [...out.matchAll(/^(.+): https:\/\/practice\.example\/#\/enter\/([\w-]{43})$/gm)];
    expect(links.map(([, name]) => name)).toEqual(['Fern Moss', 'Mika Ferro', 'Ann Ort']);
    expect(await inStore(({ people }) => people.links.use(links[0]![2]!, 'a test'))).not.toBeNull();
    expect(await ran('show', 'Flour line')).toContain('has not come in yet');
    expect(await refused('add', 'Flour line')).toContain('Nobody is named');
    expect(await refused('add', 'Flour line', 'two\nlines')).toContain("can't be a name");
    expect(await refused('add', 'Flour line', 'One', '--address', 'practice')).toContain('is no address');
  });

  it('shows, changes, closes and opens the joining code', async () => {
    const first = codeIn(await ran('new', 'Flour line'));
    expect(await ran('code', 'Flour line')).toBe(`${first}\n`);
    const second = codeIn(await ran('code', 'Flour line', '--fresh'));
    expect(second).not.toBe(first);
    expect(await ran('code', 'Flour line', '--close')).toBe(`${second} (may not be joined)\n`);
    expect(await inStore(({ people }) => people.joining.look(second.replace('-', '')))).toBeNull();
    expect(await ran('code', 'Flour line', '--open')).toBe(`${second}\n`);
    expect(await refused('code', 'Flour line', '--open', '--close')).toContain('contradict');
  });

  it('makes tutors, new ones and from learners, and links for whoever has to get in', async () => {
    await ran('new', 'Flour line');
    expect(await ran('tutor', 'Flour line', '--new', 'Tilda T.')).toMatch(
      /^Tilda T\.: http:\/\/localhost:8024\/#\/enter\//,
    );
    await ran('add', 'Flour line', 'Fern Moss');
    expect(await ran('tutor', 'Flour line', 'Fern Moss')).toBe('Fern Moss is tutor of Flour line.\n');
    expect(await ran('show', 'Flour line')).toMatch(/Fern Moss .*: tutor/);
    expect(await refused('tutor', 'Flour line')).toContain('Name either');
    await inStore(({ people }) => people.persons.make({ name: 'Ada', role: 'admin', signIn: 'ada.office' }));
    const [, token] = /enter\/([\w-]{43})/.exec(await ran('link', 'ada.office'))!;
    expect(await inStore(({ people }) => people.links.use(token!, 'a test'))).not.toBeNull();
    expect(await refused('link', 'nobody')).toContain('There is nobody called nobody.');
  });

  it('takes a roster over and gives it out, as a table and as OneRoster', async () => {
    await ran('new', 'Flour line');
    const table = join(data, 'in.csv');
    writeFileSync(table, 'name,sign-in\nMika Ferro,mika\nFern,\n');
    expect(await ran('roster', 'Flour line', '--in', table, '--look')).toBe(
      'Mika Ferro: learner, new\nFern: learner, new\nNothing was changed.\n',
    );
    await ran('roster', 'Flour line', '--in', table);
    expect(await ran('roster', 'Flour line', '--in', table)).toContain('Mika Ferro: learner, already');
    const [csv, zip] = [join(data, 'out.csv'), join(data, 'out.zip')];
    expect(await ran('roster', 'Flour line', '--out', csv)).toBe(`2 people in ${csv}.\n`);
    expect(readFileSync(csv, 'utf8')).toMatch(/Mika Ferro,mika,learner/);
    await ran('roster', 'Flour line', '--out', zip);
    const folder = join(data, 'export');
    mkdirSync(folder);
    for (const [name, bytes] of Object.entries(unzipSync(readFileSync(zip))))
      writeFileSync(join(folder, name), bytes);
    await ran('new', 'Ice works');
    expect(await ran('roster', 'Ice works', '--in', folder)).toBe(
      'Fern: learner, joined\nMika Ferro: learner, joined\n',
    );
    writeFileSync(table, 'name,manner\nFern,guest\n');
    expect(await refused('roster', 'Ice works', '--in', table)).toMatch(/in\.csv:2: manner can't be guest/);
    expect(await refused('roster', 'Ice works', '--in', join(data, 'none'))).toMatch(
      /There is no file .*none.users\.csv\.\n +Name a \.csv file, or the folder/,
    );
    expect(await refused('roster', 'Ice works', '--out', join(data, 'x.txt'))).toContain(
      'neither .csv nor .zip',
    );
    expect(await refused('roster', 'Ice works')).toContain('Say either --in or --out');
  });

  it('writes slips with the code, and with links for those who have no password', async () => {
    await ran('new', 'Flour line');
    const out = join(data, 'slips.pdf');
    expect(await ran('slips', 'Flour line', '--out', out)).toBe(`12 slips in ${out}.\n`);
    expect(await refused('slips', 'Flour line', '--out', out, '--links')).toContain('Everybody');
    await ran('add', 'Flour line', 'Fern Moss');
    expect(await ran('slips', 'Flour line', '--out', out, '--links')).toBe(`1 slip in ${out}.\n`);
    expect(readFileSync(out).subarray(0, 5).toString()).toBe('%PDF-');
  });
});

describe('polewise learner, of people who sign in', () => {
  const learner = (...words: readonly string[]) =>
    runCommand(['learner', ...words, '--data', data], { now: NOW });

  it('names them, erases them with or without answers, and leaves the last administrator', async () => {
    const made = (name: string, role: 'learner' | 'admin') =>
      inStore(async ({ people }) => (await people.persons.make({ name, role }))!.id);
    const [ada, fern] = [await made('Ada', 'admin'), await made('Fern', 'learner')];
    await inStore((store) => store.keepAnswer(answerWith({ id: 'one', at: NOW, learner: fern })));
    expect((await learner('list')).out).toBe(`Fern (${fern}): 1 answer\n`);
    expect((await learner('erase', fern, '--yes')).out).toContain('is gone: 1 answer');
    expect(await inStore(({ people }) => people.persons.byId(fern))).toBeNull();
    expect(await learner('erase', ada, '--yes')).toMatchObject({
      code: 2,
      err: expect.stringContaining('last administrator'),
    });
    const ben = await made('Ben', 'admin');
    expect((await learner('erase', ada, '--yes')).code).toBe(0);
    expect(await inStore(({ people }) => people.persons.byId(ben))).toMatchObject({ role: 'admin' });
  });
});
