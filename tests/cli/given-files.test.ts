/** Files that commands are given: read to their end however slowly they come, and refused where they are no text. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { text } from 'node:stream/consumers';
import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import { MOST_BYTES } from '../../src/cli/files.ts';
import { textOf } from '../../src/cli/utf8.ts';
import { openSqliteStore, storeFile } from '../../src/store/index.ts';
import { builtPolewise } from '../support/built.ts';
import { runCommand } from './fake-io.ts';

const folder = mkdtempSync(join(tmpdir(), 'polewise-given-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const CIRCUIT = 'supply A 24 V AC\n-H1 lamp green "Gefrier Läuft"\nA:L -H1:X1-X2 A:N\n';
const latin = (given: string): Uint8Array => Buffer.from(given, 'latin1');

describe('standard input', () => {
  it.each(['solve', 'mark'])(
    'is read by %s to its end by a program whose writer takes its time',
    async (command) => {
      const main = await builtPolewise();
      const given = command === 'solve' ? CIRCUIT : (await runCommand(['ask', '--with-answer'])).out;
      const reading = spawn(process.execPath, [main, command, '-'], { stdio: 'pipe' });
      const out = text(reading.stdout);
      const err = text(reading.stderr);
      const ended = once(reading, 'exit');
      reading.stdin.write(given.slice(0, 60));
      // By the time that another run is over this one has long begun to read.
      await once(spawn(process.execPath, [main, 'bank', 'check'], { stdio: 'ignore' }), 'exit');
      reading.stdin.end(given.slice(60));
      expect([await err, (await ended)[0]]).toEqual(['', 0]);
      expect(await out).toContain(command === 'solve' ? 'Gefrier Läuft' : 'Right.');
    },
  );

  it('that never ends is refused', async () => {
    const reading = spawn(process.execPath, [await builtPolewise(), 'solve', '-'], { stdio: 'pipe' });
    const err = text(reading.stderr);
    const ended = once(reading, 'exit');
    const megabyte = Buffer.alloc(1024 * 1024, 'a');
    reading.stdin.on('error', () => undefined);
    const write = (): void => {
      while (reading.exitCode === null && reading.stdin.writable && reading.stdin.write(megabyte));
      reading.stdin.once('drain', write);
    };
    write();
    expect((await ended)[0]).toBe(2);
    expect(await err).toContain(`standard input is larger than ${MOST_BYTES / 1024 / 1024} MB.`);
  });
});

describe('text that is no UTF-8', () => {
  const given = { 'no.txt': latin(CIRCUIT) };

  it.each([
    ['solve', 'no.txt'],
    ['draw', 'no.txt'],
    ['timing', 'no.txt', '--do', 'wait 1 s'],
    ['mark', 'no.txt', '--answer', 'H1 lit'],
    ['bank', 'check', 'no.txt'],
  ])('is refused by %s with line and column', async (...words) => {
    const { code, out, err } = await runCommand(words, { files: given });
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain('no.txt:2:26: a character here is not UTF-8.');
    expect(err).toMatch(/Save it as UTF-8/);
  });

  it('is refused in rosters, names and marks, and nobody is added', async () => {
    const data = join(folder, 'class');
    const store = await openSqliteStore(storeFile(data));
    await store.people.classes.make('Flour line', null, null);
    const files = { 'r.csv': latin('name\nAnn\nJörg M.\n'), 'n.txt': latin('Ann\nJörg M.\n') };
    for (const words of [
      ['roster', 'Flour line', '--in', 'r.csv'],
      ['add', 'Flour line', '--from', 'n.txt'],
    ]) {
      const { code, err } = await runCommand(['class', ...words, '--data', data], { files });
      expect(code).toBe(2);
      expect(err).toMatch(/(r\.csv:3|n\.txt:2):2: a character here is not UTF-8\./);
    }
    expect(await store.people.classes.list(null)).toMatchObject([{ learners: 0 }]);
    await store.close();
  });

  it('is refused in banks to practise from', async () => {
    const banks = join(folder, 'banks');
    const file = join(folder, 'banks', 'a.md');
    mkdirSync(banks);
    writeFileSync(file, latin('---\ntitle: Türen\n'));
    const { code, err } = await runCommand(['drill', '--banks', banks, '--data', join(folder, 'none')]);
    expect(code).toBe(2);
    expect(err).toContain(`${file}:2:9: a character here is not UTF-8.`);
  });

  it('is told from what it looks like', () => {
    expect(textOf(Buffer.from('\ufeffname\n', 'utf16le'))).toMatchObject({ line: 1, looksLike: 'UTF-16' });
    expect(textOf(Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0, 0))).toMatchObject({ looksLike: 'noText' });
    expect(textOf(latin('aä'))).toEqual({ line: 1, column: 2, looksLike: 'otherEncoding' });
    // Cut off in the middle of a letter.
    expect(textOf(Buffer.from('a\nbé').subarray(0, 4))).toMatchObject({ line: 2, column: 2 });
    // U+FFFD itself is a character, and a mark of byte order is none of the text.
    expect(textOf(Buffer.from('\ufeffa\ufffd'))).toBe('a\ufffd');
  });

  it('is found in whatever it stands in, in its line and column', () => {
    const line = fc.string({ unit: 'binary' }).map((given) => given.replaceAll(/[\n\ufeff]/g, ''));
    fc.assert(
      fc.property(fc.array(line), line, line, (before, left, right) => {
        const whole = Buffer.concat([
          Buffer.from([...before, ''].join('\n') + left),
          Uint8Array.of(0xff),
          Buffer.from(right),
        ]);
        const found = textOf(whole);
        expect(found).toMatchObject({ line: before.length + 1, column: [...left].length + 1 });
      }),
    );
  });
});

it('a file that is not there is told with what would be right', async () => {
  const solved = await runCommand(['solve', '/nowhere/at/all.txt']);
  expect(solved.err).toBe(
    'There is no file /nowhere/at/all.txt.\n    Give the path of a file, or - for standard input.\n',
  );
  expect((await runCommand(['solve', folder])).err).toContain(`${folder} is a folder.`);
});
