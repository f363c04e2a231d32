/**
 * Every example in every --help, in the README and in docs/ does what it says. The examples of one help or page run one
 * after another, in a folder with the circuit of the README, a class, an issued set and some files.
 */

import {
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Command } from 'commander';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readCircuit } from '../../src/circuit/index.ts';
import { createProgram } from '../../src/cli/program.ts';
import { drawText } from '../../src/drawing/index.ts';
import { openSqliteStore, storeFile } from '../../src/store/index.ts';
import { english } from '../../src/words/en/core.ts';
import { type Served, served } from '../server/served.ts';
import { answerWith } from '../support/answers.ts';
import { ownBank } from '../support/own-bank.ts';
import { startPostgres } from '../support/postgres.ts';
import { pipeOf, type ShellCommand } from '../support/shell-words.ts';
import { type FakeOptions, fakeIo, type Ran, runCommand } from './fake-io.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const text = (file: string): string => readFileSync(join(root, file), 'utf8');
const NOW = Date.UTC(2026, 8, 28, 9);

/** Examples by where they stand. */
async function examplesInHelp(): Promise<[string, string[]][]> {
  const leaves = (command: Command, words: readonly string[] = []): string[][] =>
    command.commands.flatMap((each) =>
      each.commands.length > 0 ? leaves(each, [...words, each.name()]) : [[...words, each.name()]],
    );
  const found: [string, string[]][] = [];
  for (const words of leaves(createProgram(fakeIo().io).command)) {
    const { out } = await runCommand([...words, '--help'], { columns: 160 });
    const [, examples = ''] = /\nExamples:\n((?: {2}.*\n)+)/.exec(out) ?? [];
    found.push([`polewise ${words.join(' ')} --help`, commandsIn(examples)]);
  }
  return found;
}

/** Lines that begin with the command, or with a variable for it; those that end with a backslash go on. */
function commandsIn(block: string): string[] {
  const whole = block.replaceAll('npm run -s polewise -- ', 'polewise ');
  return [...whole.matchAll(/^ *((?:[A-Z_]+=\S+ )?polewise (?:.*\\\n)*.*)$/gm)].map(([, line]) => line!);
}

/** The name of a command that needs something more. */
function isName(line: string): boolean | undefined {
  let command: Command | undefined = createProgram(fakeIo().io).command;
  for (const word of line.split(' ').slice(1))
    command = command?.commands.find((each) => each.name() === word);
  return command?.registeredArguments.some(({ required }) => required);
}

function examplesIn(file: string): string[] {
  const page = text(file);
  const fenced = [...page.matchAll(/^```(?:sh)?\n([\s\S]*?)^```$/gm)].flatMap(([, block]) =>
    commandsIn(block!),
  );
  const indented = commandsIn([...page.matchAll(/^ {4}(?! ).*$/gm)].map(([line]) => line).join('\n'));
  // In a sentence or a table, where it has no places to fill in and names what it does.
  const inline = [...page.matchAll(/`((?:npm run -s polewise --|polewise) [^`]+)`/g)]
    .map(([, line]) => line!.replace('npm run -s polewise -- ', 'polewise '))
    .filter((line) => !/[<…]|COMMAND|\.\.\./.test(line) && !isName(line));
  return [...new Set([...fenced, ...indented, ...inline])];
}

const pages = [
  'README.md',
  'DEVELOPERS.md',
  ...readdirSync(join(root, 'docs'), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.md'))
    .map((name) => join('docs', name)),
];

const folder = mkdtempSync(join(tmpdir(), 'polewise-examples-'));
const before = process.cwd();
let code = '';
let made = 0;

/** The circuit that the README shows. */
const [, FAN = ''] = /```\n(# Vent fan 2[\s\S]*?)```/.exec(text('README.md')) ?? [];

beforeAll(async () => {
  const data = join(folder, 'fixture');
  const store = await openSqliteStore(storeFile(data), { now: () => NOW });
  const { classes, persons, joining } = store.people;
  await persons.make({ name: 'Ada Office', signIn: 'ada', role: 'admin' });
  const tutor = (await persons.make({ name: 'Tilda Sieve', signIn: 'tilda', role: 'tutor' }))!;
  await joining.byNames((await classes.make('Flour line', null, tutor.id)).id, ['Finn Hopper']);
  await joining.byNames((await classes.make('Autumn fitters', null, tutor.id)).id, ['Ben Cole', 'Cleo Dunn']);
  await store.keepAnswers([answerWith({ id: 'one', at: NOW - 1000 })]);
  await store.close();
  const words = [
    '--title',
    'Week 40',
    '--skill',
    'changeover-legs',
    '--items',
    '4',
    '--marks',
    '2',
    '--level',
    'small',
  ];
  cpSync(data, join(folder, 'without-a-set'), { recursive: true });
  const issued = await runCommand(
    ['homework', 'new', 'Autumn fitters', ...words, '--issue', '--data', data],
    { now: NOW },
  );
  expect(issued).toMatchObject({ code: 0, err: '' });
  const again = await openSqliteStore(storeFile(data), { now: () => NOW });
  const [set] = await again.homework.setsOf((await again.people.classes.list(null)).map(({ id }) => id));
  code = (await again.homework.papersIn([set!.set.id]))[0]!.code;
  await again.close();
});
afterAll(() => {
  process.chdir(before);
  rmSync(folder, { recursive: true, force: true });
});

/** A folder as the examples have it, which becomes the one that they run in. */
async function begin(examples: readonly string[]): Promise<string> {
  const here = join(folder, `run-${++made}`);
  // Whoever makes a set finds none of its title.
  const makesOne = examples.some((line) => line.startsWith('polewise homework new'));
  const fixture = makesOne ? 'without-a-set' : 'fixture';
  for (const place of ['data/polewise', 'srv/polewise', 'demo-data'])
    cpSync(join(folder, fixture), join(here, place), { recursive: true });
  mkdirSync(join(here, 'media/stick'), { recursive: true });
  mkdirSync(join(here, 'my-banks'));
  mkdirSync(join(here, 'more'));
  for (const name of readdirSync(join(root, 'question-banks')).filter((each) => each.endsWith('.md')))
    cpSync(join(root, 'question-banks', name), join(here, 'my-banks', name));
  process.chdir(here);
  writeFileSync('fan.txt', FAN);
  writeFileSync('names.csv', 'name\nMika Furrow\n');
  writeFileSync('marks.txt', `${code} 2 1.5 - 2\n`);
  const question = ['ask', '--family', 'status-pair', '--kind', 'lamp-states', '--seed', '34'];
  writeFileSync('question.json', (await runCommand(question)).out);
  // Read together with the others.
  renameSync('my-banks/interlocks.md', 'more/interlocks.md');
  return here;
}

const placed = (word: string, here: string): string =>
  word.replace(/^\/(srv|media)\//, `${here}/$1/`).replace(/^K7M2QP9DX$/, code);

/** What an example that asks at a terminal says where nobody sits at one. */
const ASKS: Readonly<Record<string, RegExp>> = { 'polewise learner erase me': /Say --yes/ };

async function runPipe(line: string, here: string): Promise<void> {
  let given = '';
  const pipe = pipeOf(line);
  for (const command of pipe) {
    const [program, ...words] = command.words.map((word) => placed(word, here));
    if (program === 'less') continue;
    expect(program, line).toBe('polewise');
    if (words[0] === 'serve' || words[0] === 'demo') {
      await serveAndStop(words, command, here);
      continue;
    }
    const options: FakeOptions = {
      now: NOW,
      files: { '-': given },
      lines: words[0] === 'drill' ? Array.from({ length: 20 }, () => 'pass') : [],
      environment: { XDG_DATA_HOME: join(here, 'data'), ...command.environment },
    };
    const ran: Ran = await runCommand(words, options);
    const asks = ASKS[line];
    if (asks) expect(ran).toMatchObject({ code: 2, err: expect.stringMatching(asks) });
    else expect(ran, `${line}\n${ran.err}`).toMatchObject({ code: 0, err: '' });
    if (command.into) writeFileSync(command.into, ran.out);
    given = ran.out;
  }
}

/** Servers run until they are stopped, on a port of their own. */
async function serveAndStop(
  words: readonly string[],
  { environment }: ShellCommand,
  here: string,
): Promise<void> {
  const [command = '', ...rest] = words;
  const port = rest.indexOf('--port');
  const options = port < 0 ? rest : rest.toSpliced(port, 2);
  const database = 'DATABASE_URL' in environment ? await startPostgres() : undefined;
  let server: Served | undefined;
  try {
    server = await served(
      options,
      { XDG_DATA_HOME: join(here, 'data'), ...(database ? { DATABASE_URL: await database.fresh() } : {}) },
      command,
    );
    expect(
      await (await fetch(`http://localhost:${new URL(server.address).port}/api/health`)).json(),
    ).toMatchObject({ status: 'alive' });
  } finally {
    expect(await server?.end('SIGTERM')).toBe(0);
    await database?.stop();
  }
}

const helps = await examplesInHelp();

describe('examples in help', () => {
  it.each(helps)('%s', async (_where, examples) => {
    expect(examples.length).toBeGreaterThan(0);
    const here = await begin(examples);
    for (const line of examples) await runPipe(line, here);
  });
});

describe('examples in the documentation', () => {
  const found = pages
    .map((page): [string, string[]] => [page, examplesIn(page)])
    .filter(([, some]) => some.length > 0);

  it.each(found)('%s', async (_page, examples) => {
    const here = await begin(examples);
    for (const line of examples) await runPipe(line, here);
  });

  it('are there in most pages for users', () => {
    expect(found.map(([page]) => page)).toEqual(
      expect.arrayContaining([
        'README.md',
        'docs/backup.md',
        'docs/classes.md',
        'docs/deploying.md',
        'docs/drawing.md',
        'docs/homework.md',
        'docs/writing-a-bank.md',
      ]),
    );
  });

  it('name scripts that there are', () => {
    const { scripts } = JSON.parse(text('package.json')) as { scripts: Record<string, string> };
    for (const page of pages)
      for (const [, name] of text(page).matchAll(/\bnpm run (?:-s )?([\w:]+)/g))
        expect(scripts, page).toHaveProperty([name!]);
  });
});

describe('the README', () => {
  it('shows a question as the drill puts it', () => {
    const [, shown = ''] = /-- drill\n\n```\n([\s\S]*?)\n```/.exec(text('README.md')) ?? [];
    const circuit = readCircuit(FAN);
    if (!circuit.ok) throw new Error(JSON.stringify(circuit.problems));
    const skill = ownBank()
      .topics.flatMap(({ skills }) => skills)
      .find(({ id }) => id === 'changeover-legs')!;
    const heading = `Question 2 of 10  ${skill.title} (new)`;
    expect(shown).toBe(
      [heading, '', circuit.value.title, '', drawText(english, circuit.value, { columns: 80 })].join('\n'),
    );
  });

  it('names every command', () => {
    for (const { name } of createProgram(fakeIo().io).command.commands.map((each) => ({ name: each.name() })))
      expect(text('README.md')).toMatch(new RegExp(`\\| .*\`${name}\\b`));
  });
});
