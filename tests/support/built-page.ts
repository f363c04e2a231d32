/** The page built as it is delivered, in a folder of its own. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../', import.meta.url));

export function buildPage(): string {
  const folder = join(mkdtempSync(join(tmpdir(), 'polewise-page-')), 'web');
  const { NODE_ENV: _, ...environment } = process.env;
  execFileSync(
    process.execPath,
    [join(root, 'node_modules/vite/bin/vite.js'), 'build', '--outDir', folder, '--logLevel', 'error'],
    { cwd: root, env: environment },
  );
  return folder;
}
