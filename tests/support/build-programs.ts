import { execFile } from 'node:child_process';
import { cpSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';

const root = fileURLToPath(new URL('../../', import.meta.url));
/** Under node_modules, so that built programs find their packages as installed ones do. */
export const PLACE = join(root, 'node_modules');

/** Everything under `src` and the programs of the tests, compiled as for delivery, with what they read beside them. */
export async function buildPrograms(folder: string): Promise<string> {
  // Types are checked elsewhere; a half-made change has to run too.
  const words = [
    join(PLACE, 'typescript/bin/tsc'),
    '-p',
    'tests/support/tsconfig.programs.json',
    '--noCheck',
    '--outDir',
    folder,
  ];
  await promisify(execFile)(process.execPath, words, { cwd: root });
  for (const name of ['package.json', 'question-banks'])
    cpSync(join(root, name), join(folder, name), { recursive: true });
  return folder;
}
