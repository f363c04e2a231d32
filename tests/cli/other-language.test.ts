/** The commands speak the language that the terminal brings, and no word of another. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Command } from 'commander';
import { afterAll, describe, expect, it } from 'vitest';
import { ownWords } from '../../src/cli/own-words.ts';
import { createProgram } from '../../src/cli/program.ts';
import { commands } from '../../src/words/en/commands/index.ts';
import { madeUp, madeUpLanguage, unsaid } from '../support/made-up-language.ts';
import { type FakeOptions, fakeIo, type Ran, runCommand } from './fake-io.ts';

const words = madeUpLanguage(commands);
const folder = mkdtempSync(join(tmpdir(), 'polewise-language-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const run = (line: readonly string[], options: FakeOptions = {}): Promise<Ran> =>
  runCommand(line, { columns: 100, ...options, words });

const under = (command: Command, named: readonly string[] = []): (readonly string[])[] => [
  named,
  ...command.commands.flatMap((each) => under(each, [...named, each.name()])),
];
const all = under(createProgram(fakeIo().io).command);

/** Words of three letters and more that have not come through the catalogue. */
const wordsLeft = (text: string): readonly string[] => unsaid(text).match(/[A-Za-z]{3,}/g) ?? [];

describe('in another language', () => {
  it.each(all.map((named) => [named.join(' ') || 'the program itself', named] as const))(
    'is the help of %s, but for what is typed',
    async (_, named) => {
      const { out, code } = await run([...named, '--help']);
      expect(code).toBe(0);
      const [head = '', ...rest] = out.split(`${words.help.titles.examples}\n`);
      const after = rest.join('').replace(/^(?: {2}.*\n?)+/, '');
      // Names of options and commands, and values that can be given.
      const typed = new Set(['polewise', 'help', ...all.flat()]);
      const left = wordsLeft(`${head}${after}`.replace(/"[^"]*"/g, '').replace(/--[a-z-]+/g, ''));
      expect(left.filter((word) => !typed.has(word))).toEqual([]);
    },
  );

  it('takes what is typed as in any: several values too, behind a word that ends with no plain letter', async () => {
    const files = {
      'fan.txt':
        'supply A 24 V AC\n-F1 breaker\n-K3 relay\n-H1 lamp\nA:L -F1:1-2 -K3:A1-A2 A:N\n-F1:2 -H1:X1-X2 A:N\n',
    };
    const { out, code } = await run(
      [
        'solve',
        'fan.txt',
        '--fault',
        '-F1:2 broken',
        '--fault',
        '-K3:A1 broken',
        '--do',
        'wait 5 s',
        '--json',
      ],
      { files },
    );
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ outcome: { kind: 'steady' } });
  });

  const FAN =
    'supply A 24 V AC\n-S1 push-button make\n-K3 relay 1 poles\n-H1 lamp\nA:L -S1:13-14 -K3:A1-A2 A:N\nA:L -K3:11-14 -H1:X1-X2 A:N\n';

  it.each([
    ['solve', 'fan.txt', '--do', 'press -S1; release -S1'],
    ['solve', 'fan.txt', '--fault', '-K3:14 broken'],
  ])('says what a circuit does: %s %s %s "%s"', async (...line) => {
    const { out, code } = await run(line, { files: { 'fan.txt': FAN } });
    expect(code).toBe(0);
    // Acts and devices are as they are written.
    expect(wordsLeft(out).filter((word) => !/^(press|release)$/.test(word))).toEqual([]);
    expect(out).toContain(madeUp('at rest').slice(1, 5));
  });

  it.each([
    [['sovle', 'fan.txt']],
    [['drill', '--sklil', 'x']],
    [['solve']],
    [['solve', 'none.txt']],
    [['solve', folder]],
    [['solve', 'a', 'b']],
    [['ask', '--seed']],
    [['ask', '--family', 'nothing']],
    [['ask', '--kind', 'nothing']],
    [['ask', '--skill', 'nothing']],
    [['mark', 'fan.txt']],
    [['class', 'slips', 'x']],
    [['class', 'slips', 'x', '--out', 'x.txt']],
    [['class', 'roster', 'x']],
    [['class', 'tutor', 'x']],
    [['draw', 'fan.txt', '--width', 'wide']],
    [['draw', 'fan.txt', '--width', 'phone']],
    [['draw', 'fan.txt', '--sheet', '7']],
    [['draw', 'fan.txt', '-o', 'fan.gif']],
    [['timing', 'fan.txt', '--do', ' ']],
    [['serve', '--port', '70000']],
    [['serve', '--host', '0.0.0.0']],
    [['serve', '--plain-http']],
    [['bank', 'check', '-']],
    [['bank', 'check', folder]],
    [['rebuild', '--data', 'package.json']],
    [['drill', '--count', '0']],
    [['drill', '--skill', 'x', '--place']],
    [['homework', 'new', 'x', '--title', 'x']],
    [['homework', 'new', 'x', '--title', 'x', '--skill', 'x', '--opens', '2026-02-30']],
    [['homework', 'new', 'x', '--title', 'x', '--skill', 'x', '--opens', 'soon']],
  ])('refuses %s', async (line) => {
    const { err, code } = await run(line, { files: { 'fan.txt': FAN } });
    expect(code).toBe(2);
    expect(wordsLeft(err)).toEqual([]);
    expect(err).toMatch(/^⟦.*⟧\n {4}⟦/s);
  });

  it('runs classes, and tells who is kept', async () => {
    const data = ['--data', folder];
    const told = async (...line: string[]): Promise<string> => {
      const { out, err, code } = await run([...line, ...data]);
      expect({ code, err }).toEqual({ code: 0, err: '' });
      return out;
    };
    for (const line of [
      ['class', 'list'],
      ['class', 'new', 'Flour line'],
      ['class', 'list'],
      ['class', 'show', 'Flour line'],
      ['class', 'add', 'Flour line', 'Mika F.'],
      ['class', 'show', 'Flour line'],
      ['class', 'code', 'Flour line', '--close'],
      ['class', 'tutor', 'Flour line', '--new', 'Tilda T.'],
      ['class', 'slips', 'Flour line', '--out', join(folder, 'slips.pdf')],
      ['class', 'roster', 'Flour line', '--out', join(folder, 'class.csv')],
      ['homework', 'list', 'Flour line'],
      ['learner', 'list'],
      ['rebuild', '--check'],
      ['rebuild', '--marks'],
      ['backup', join(folder, 'copy.sqlite')],
    ])
      if (line[1] === 'list' && line[0] === 'class' && line.length === 2) {
        const { out } = await run([...line, ...data]);
        expect(wordsLeft(out)).toEqual([]);
      } else expect(wordsLeft(await told(...line)), line.join(' ')).toEqual([]);
  });
});

describe('the language of the terminal', () => {
  it.each([{}, { LANG: 'en_GB.UTF-8' }, { LANG: 'xx_XX.UTF-8' }, { LANG: 'constructor' }, { LC_ALL: 'C' }])(
    'is one that there is: %o',
    async (environment) => {
      expect(await ownWords(environment)).toEqual({ language: 'en', words: commands });
    },
  );
});
