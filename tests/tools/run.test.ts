/** What starts the command line: the package's own program, and the one that runs a folder of sources. */
import { execFileSync, spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import { BUILT_FROM, digestOfSources, ROOT } from '../../tools/sources.js';
import { PLACE } from '../support/build-programs.ts';
import { builtPolewise } from '../support/built.ts';

/** Under node_modules, so that packages are found. */
const folders: string[] = [];
afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
});

function folder(): string {
  const made = mkdtempSync(join(PLACE, '.polewise-run-'));
  folders.push(made);
  return made;
}

const run = (program: string, ...words: string[]): string =>
  execFileSync(process.execPath, [program, ...words], { encoding: 'utf8' });

it('the program of the package runs what has been built, in a folder with nothing but what is packed', async () => {
  const home = folder();
  const built = dirname(dirname(dirname(await builtPolewise())));
  for (const part of ['bin', 'question-banks', 'package.json'])
    cpSync(join(ROOT, part), join(home, part), { recursive: true });
  for (const part of ['src', 'parts'])
    cpSync(join(built, part), join(home, 'dist/program', part), { recursive: true });
  const program = join(home, 'bin/polewise.js');
  expect(run(program, '--version')).toMatch(/^polewise \d+\.\d+\.\d+\n$/);
  expect(run(program, 'bank', 'check')).toMatch(/: no mistakes\.\n$/);
  writeFileSync(join(home, 'lamp.txt'), 'supply A 24 V AC\n-H1 lamp\nA:L -H1:X1-X2 A:N\n');
  expect(run(program, 'solve', join(home, 'lamp.txt'))).toMatch(/-H1 +lit/);
});

it('the program of the package says so in words where nothing has been built', () => {
  const home = folder();
  cpSync(join(ROOT, 'bin'), join(home, 'bin'), { recursive: true });
  const { status, stderr } = spawnSync(process.execPath, [join(home, 'bin/polewise.js'), '--version'], {
    encoding: 'utf8',
  });
  expect(status).toBe(1);
  expect(stderr).toMatch(/^polewise has not been built: .* Run npm run build in its folder\.\n$/);
});

describe('a folder of sources', () => {
  let home: string;
  const write = (file: string, text: string): void => {
    mkdirSync(dirname(join(home, file)), { recursive: true });
    writeFileSync(join(home, file), text);
  };
  const polewise = (): string => run(join(home, 'tools/run.js'), 'ask');
  const build = (): void => write(`dist/program/${BUILT_FROM}`, digestOfSources(home));

  beforeEach(() => {
    home = folder();
    cpSync(join(ROOT, 'tools'), join(home, 'tools'), { recursive: true });
    write('package.json', '{ "type": "module" }');
    write('package-lock.json', '{}');
    write('vite.programs.config.ts', '');
    write('shared/circuit.ts', 'export const circuit = 1;');
    write('src/web/page.ts', 'export const page = 1;');
    write('src/cli/word.ts', "export const word: string = 'sources';");
    write('src/cli/main.ts', "import { word } from './word.ts'; console.log(word, process.argv[2]);");
    write('bin/polewise.js', "console.log('built', process.argv[2]);");
  });

  it('is run from the sources where nothing was built', () => {
    expect(polewise()).toBe('sources ask\n');
  });

  it('is run as it was built of just these sources', () => {
    build();
    expect(polewise()).toBe('built ask\n');
    write('src/web/page.ts', 'export const page = 2;');
    expect(polewise(), 'the page is another program').toBe('built ask\n');
  });

  it.each([
    ['a change of the same length', () => write('shared/circuit.ts', 'export const circuit = 2;')],
    ['a new file', () => write('src/new.ts', '')],
    ['a file gone', () => rmSync(join(home, 'shared/circuit.ts'))],
    [
      'a file by another name',
      () => renameSync(join(home, 'shared/circuit.ts'), join(home, 'shared/circuits.ts')),
    ],
    ['other packages', () => write('package-lock.json', '{ "packages": {} }')],
    ['another way to build', () => write('vite.programs.config.ts', 'export {};')],
  ])('is run from the sources again after %s', (_, change) => {
    build();
    change();
    expect(polewise()).toBe('sources ask\n');
  });
});
