/** `polewise bank check`: what it prints and how it ends. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { changed, SAMPLE } from '../banks/sample.ts';
import { type Ran, runCommand } from './fake-io.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'polewise-'));
});
afterEach(() => {
  rmSync(folder, { recursive: true });
});

/** Checks files given by name, without a disk. */
const check = (files: Readonly<Record<string, string>>): Promise<Ran> =>
  runCommand(['bank', 'check', ...Object.keys(files)], { files });

describe('bank check', () => {
  it('finds no mistake in the banks that come with the program', async () => {
    expect(await runCommand(['bank', 'check'])).toMatchObject({ code: 0, err: '' });
  });

  it('says what it has read', async () => {
    expect(await check({ 'banks/sample.md': SAMPLE })).toEqual({
      code: 0,
      out: '1 topic, 2 skills, 2 questions: no mistakes.\n',
      err: '',
    });
  });

  it('reads the Markdown files of a folder, and no others', async () => {
    writeFileSync(join(folder, 'sample.md'), SAMPLE);
    writeFileSync(join(folder, 'notes.txt'), 'no bank');
    expect(await runCommand(['bank', 'check', folder])).toMatchObject({ code: 0 });
  });

  it('tells each mistake with file, line, column, reason and what would be right, and ends with 2', async () => {
    const text = changed('answer: -H1 dark, -H2 lit', 'answer: -H1 dark, -H2 dark');
    const { code, out, err } = await check({ 'banks/sample.md': text });
    expect({ code, out }).toEqual({ code: 2, out: '' });
    const [place, why, end] = err.split('\n');
    expect(place).toBe('banks/sample.md:58:19: The solver doesn\'t confirm "dark" for -H2: it says "lit".');
    expect(why).toMatch(/^ {4}Why: .*-K1:11-14/);
    expect(end).toBe('1 mistake in 1 file.');
  });

  it('tells the mistakes of several files', async () => {
    const { err } = await check({
      'a.md': SAMPLE,
      'b.md': changed('order: 1', 'order: one'),
    });
    expect(err).toContain('a.md:2:5: ');
    expect(err).toContain('b.md:5:8: ');
    expect(err).toContain('in 2 files.');
  });

  it('tries the recipes', async () => {
    const { code, err } = await check({ 'sample.md': changed('[lamp-states, sequence]', '[still-live]') });
    expect(code).toBe(2);
    expect(err).toContain('gives no still-live question');
  });

  it('refuses what is not there', async () => {
    expect(await runCommand(['bank', 'check', join(folder, 'absent.md')])).toMatchObject({
      code: 2,
      out: '',
    });
    expect((await runCommand(['bank', 'check', folder])).err).toContain('There is no bank');
  });
});
