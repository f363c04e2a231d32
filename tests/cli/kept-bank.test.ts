/** The banks as they were read when the program was built stand for just the texts that come with it. */
import { appendFileSync, cpSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ROOT } from '../../tools/sources.js';
import { builtPolewise } from '../support/built.ts';
import { ownBank } from '../support/own-bank.ts';
import { loadedBy } from './loaded.ts';

const folder = mkdtempSync(join(tmpdir(), 'polewise-kept-bank-'));
const others = join(folder, 'banks');
cpSync(join(ROOT, 'question-banks'), others, { recursive: true });
afterAll(() => rmSync(folder, { recursive: true, force: true }));

let polewise: string;
beforeAll(async () => {
  polewise = await builtPolewise();
});

const ASK = ['ask', '--skill', 'changeover-legs', '--seed', '7'];

describe('banks kept by the build', () => {
  it('are what reading the texts gives', () => {
    const file = join(dirname(dirname(dirname(polewise))), 'bank-as-read.json');
    const { bank } = JSON.parse(readFileSync(file, 'utf8')) as { bank: unknown };
    expect(bank).toStrictEqual(ownBank());
  });

  it('are taken for the same texts, wherever they are, and nothing is loaded to read any', async () => {
    const own = await loadedBy(polewise, ASK);
    expect(own.packages).not.toContain('yaml');
    const copied = await loadedBy(polewise, [...ASK, '--banks', others]);
    expect(copied.packages).not.toContain('yaml');
    expect(copied.printed).toBe(own.printed);
  });

  it('are not taken for texts that differ: these are read, and their mistakes told', async () => {
    const changed = join(folder, 'changed');
    cpSync(others, changed, { recursive: true });
    appendFileSync(join(changed, 'interlocks.md'), '\nOne more sentence.\n');
    const read = await loadedBy(polewise, [...ASK, '--banks', changed]);
    expect(read.packages).toContain('yaml');
    expect(JSON.parse(read.printed)).toHaveProperty('question');
    appendFileSync(join(changed, 'interlocks.md'), '\n```circuit none\n-Q9 lamp\n');
    await expect(loadedBy(polewise, [...ASK, '--banks', changed])).rejects.toThrow(/interlocks\.md:\d+/);
  });
});
