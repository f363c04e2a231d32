/**
 * `npm run mutants -- FOLDER`: changes the folder's code in one small place after another, and looks whether a test notices.
 * What survives is listed, with its place; docs/decisions/0005-mutants.md answers for it. Takes minutes to hours: not in CI.
 */
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { Stryker } from '@stryker-mutator/core';
import { FOLDERS } from './folders.ts';

const { positionals, values } = parseArgs({ allowPositionals: true, options: { of: { type: 'string' } } });
const [name, ...only] = positionals;
const folder = name === undefined ? undefined : FOLDERS[name];
if (name === undefined || !folder) {
  process.stderr.write(`Name one of ${Object.keys(FOLDERS).join(', ')}.\n`);
  process.exit(2);
}
if (values.of !== undefined && !/^[1-9]\d{0,5}$/.test(values.of)) {
  process.stderr.write(`--of takes a whole number from 1, as 40 for every fortieth; not "${values.of}".\n`);
  process.exit(2);
}
// A small part of what tests try at random.
process.env['POLEWISE_DRAWN'] = '0.02';
process.env['MUTANTS_OF'] = values.of ?? '1';
process.env['MUTANTS_TESTS'] = JSON.stringify(folder.tests);
const results = await new Stryker({
  mutate: only.length > 0 ? only : [...folder.code],
  testRunner: 'vitest',
  plugins: ['@stryker-mutator/vitest-runner', fileURLToPath(new URL('sample.js', import.meta.url))],
  checkers: values.of === undefined ? [] : ['sample'],
  vitest: { configFile: 'tests/mutants/vitest.config.ts', related: false },
  buildCommand: 'tsx tests/mutants/bundle.ts',
  coverageAnalysis: 'perTest',
  // What is only run when a module is loaded can't be told apart by test: it would be run against all of them.
  ignoreStatic: true,
  concurrency: Number(process.env['MUTANTS_AT_ONCE'] ?? 2),
  reporters: ['clear-text', 'progress-append-only', 'json'],
  jsonReporter: { fileName: `.mutants/${name}.json` },
  clearTextReporter: { allowColor: false, reportTests: false, skipFull: true },
  tempDirName: '.mutants/work',
  // A folder of its own for each run holds what the tests read.
  ignorePatterns: ['dist', '.mutants', 'bundled', 'docs/gallery'],
  dryRunTimeoutMinutes: 20,
  timeoutMS: 5_000,
  timeoutFactor: 2,
  disableTypeChecks: true,
  // It would rewrite references with a compiler interface that TypeScript doesn't have any more; there are none.
  tsconfigFile: 'none.json',
  thresholds: { high: 90, low: 80, break: 80 },
}).runMutationTest();
process.stdout.write(`${results.length} mutants.\n`);
