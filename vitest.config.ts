import { defineConfig } from 'vitest/config';
import { HANGING, NEVER_COMES } from './tests/support/hanging.ts';

export default defineConfig({
  test: {
    setupFiles: ['tests/support/seeded.ts'],
    include: ['tests/**/*.test.ts'],
    globalSetup: ['tests/support/built-once.ts'],
    testTimeout: HANGING,
    hookTimeout: HANGING,
    expect: { poll: { timeout: NEVER_COMES } },
    pool: 'forks',
    // One for each core: the tests of the page and of killed servers mostly wait.
    maxWorkers: '100%',
    reporters: process.env['CI'] ? ['dot', './tests/support/closing-line.ts'] : ['default'],
  },
});
