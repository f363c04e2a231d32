import { execFile } from 'node:child_process';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { ROOT } from '../../tools/sources.js';

/** Builds as for delivery, by one of the configurations, into a folder. */
export async function viteBuild(config: string, folder: string): Promise<void> {
  const { NODE_ENV: _, ...environment } = process.env;
  const words = ['build', '--config', config, '--outDir', folder, '--emptyOutDir', '--logLevel', 'error'];
  await promisify(execFile)(process.execPath, [join(ROOT, 'node_modules/vite/bin/vite.js'), ...words], {
    cwd: ROOT,
    env: environment,
  });
}
