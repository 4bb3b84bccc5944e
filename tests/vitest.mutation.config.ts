import { defineConfig } from 'vitest/config';

/** The tests of the planner alone, for mutation testing. */
export default defineConfig({
  test: {
    include: ['tests/unit/planner/**/*.test.ts', 'tests/reference/**/*.test.ts'],
    setupFiles: ['tests/setup.ts'],
    testTimeout: 60_000,
    pool: 'threads',
  },
});
