/** The programs as they are delivered, and beside them, of the same parts, those that tests run as processes of their own. */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { mergeConfig, normalizePath } from 'vite';
import { ROOT } from '../../tools/sources.js';
import programs from '../../vite.programs.config.ts';

const children = readdirSync(join(ROOT, 'tests'), { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('-child.ts'))
  .map((name) => normalizePath(join('tests', name)));

export default mergeConfig(programs, {
  build: {
    rollupOptions: { input: Object.fromEntries(children.map((file) => [file.replace(/\.ts$/, ''), file])) },
  },
});
