/**
 * `npm run mutants -- FOLDER`: changes the folder's code in one small place after another, and looks whether a test notices.
 * What survives is listed, with its place; docs/decisions/0005-mutants.md answers for it. Takes minutes to hours: not in CI.
 */
import { Stryker } from '@stryker-mutator/core';
import { FOLDERS } from './folders.ts';

const [name, ...only] = process.argv.slice(2);
const folder = name === undefined ? undefined : FOLDERS[name];
if (name === undefined || !folder) {
  process.stderr.write(`Name one of ${Object.keys(FOLDERS).join(', ')}.\n`);
  process.exit(2);
}
process.env['MUTANTS_TESTS'] = JSON.stringify(folder.tests);
const results = await new Stryker({
  mutate: only.length > 0 ? only : [...folder.code],
  testRunner: 'vitest',
  plugins: ['@stryker-mutator/vitest-runner'],
  vitest: { configFile: 'tests/mutants/vitest.config.ts', related: false },
  coverageAnalysis: 'perTest',
  // What is only run when a module is loaded can't be told apart by test: it would be run against all of them.
  ignoreStatic: true,
  concurrency: 2,
  reporters: ['clear-text', 'progress-append-only', 'json'],
  jsonReporter: { fileName: `.mutants/${name}.json` },
  clearTextReporter: { allowColor: false, reportTests: false, skipFull: true },
  tempDirName: '.mutants/work',
  // A folder of its own for each run holds what the tests read.
  ignorePatterns: ['dist', '.mutants', 'docs/gallery'],
  timeoutMS: 20_000,
  timeoutFactor: 3,
  disableTypeChecks: true,
  // It would rewrite references with a compiler interface that TypeScript doesn't have any more; there are none.
  tsconfigFile: 'none.json',
  thresholds: { high: 90, low: 80, break: 80 },
}).runMutationTest();
process.stdout.write(`${results.length} mutants.\n`);
