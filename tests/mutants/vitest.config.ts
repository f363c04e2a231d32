/** The tests that have to notice what is changed in one folder, without what only the others need. */
import { existsSync, readFileSync } from 'node:fs';
import { defineConfig } from 'vitest/config';
import { HANGING } from '../support/hanging.ts';
import { BUNDLED } from './bundled.ts';

const tests = existsSync(BUNDLED.list)
  ? readFileSync(BUNDLED.list, 'utf8')
  : (process.env['MUTANTS_TESTS'] ?? '[]');

export default defineConfig({
  test: {
    setupFiles: ['tests/support/seeded.ts'],
    include: JSON.parse(tests) as string[],
    // Modules are loaded once for all files.
    isolate: false,
    server: { deps: { external: [/\/bundled\//] } },
    testTimeout: HANGING,
    hookTimeout: HANGING,
  },
});
