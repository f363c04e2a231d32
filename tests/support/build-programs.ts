import { execFile } from 'node:child_process';
import { cpSync } from 'node:fs';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { ROOT } from '../../tools/sources.js';
import { viteBuild } from './vite-build.ts';

/** Under node_modules, so that built programs find their packages as installed ones do. */
export const PLACE = join(ROOT, 'node_modules');

/** The command line as it is delivered and the programs of the tests, with what they read beside them. */
export async function buildPrograms(folder: string): Promise<string> {
  await viteBuild('tests/support/programs.config.ts', folder);
  for (const name of ['package.json', 'question-banks'])
    cpSync(join(ROOT, name), join(folder, name), { recursive: true });
  await promisify(execFile)(process.execPath, [join(folder, 'src/cli/keep-bank.js'), folder]);
  return folder;
}
