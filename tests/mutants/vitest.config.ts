/** The tests that have to notice what is changed in one folder, without what only the others need. */
import { defineConfig } from 'vitest/config';
import { HANGING } from '../support/hanging.ts';

export default defineConfig({
  test: {
    setupFiles: ['tests/support/seeded.ts'],
    include: JSON.parse(process.env['MUTANTS_TESTS'] ?? '[]') as string[],
    testTimeout: HANGING,
    hookTimeout: HANGING,
  },
});
