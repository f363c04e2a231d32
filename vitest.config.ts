import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    setupFiles: ['tests/support/seeded.ts'],
    include: ['tests/**/*.test.ts'],
    // Published comparisons run thousands of circuits; nothing here asserts on time.
    testTimeout: 300_000,
    hookTimeout: 60_000,
    pool: 'forks',
    reporters: process.env['CI'] ? ['dot', './tests/support/closing-line.ts'] : ['default'],
  },
});
