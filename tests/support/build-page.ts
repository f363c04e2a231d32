import { execFile } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';

const root = fileURLToPath(new URL('../../', import.meta.url));

/** Builds the page as it is delivered into a folder. Tests take the one that `built.ts` gives. */
export async function buildPage(folder: string): Promise<string> {
  const { NODE_ENV: _, ...environment } = process.env;
  await promisify(execFile)(
    process.execPath,
    [
      join(root, 'node_modules/vite/bin/vite.js'),
      'build',
      '--outDir',
      folder,
      '--emptyOutDir',
      '--logLevel',
      'error',
    ],
    { cwd: root, env: environment },
  );
  return folder;
}
