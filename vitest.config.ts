import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    setupFiles: ['tests/support/seeded.ts'],
    include: ['tests/**/*.test.ts'],
    // Published comparisons run thousands of circuits; nothing here asserts on time.
    testTimeout: 300_000,
    hookTimeout: 60_000,
    pool: 'forks',
    // One for each core: the tests of the page and of killed servers mostly wait.
    maxWorkers: '100%',
    reporters: process.env['CI'] ? ['dot', './tests/support/closing-line.ts'] : ['default'],
  },
});
