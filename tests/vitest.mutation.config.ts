import { defineConfig } from 'vitest/config';

/** The tests of the planner alone, for mutation testing. Counting which test meets which mutant makes them many times slower. */
export default defineConfig({
  test: {
    include: ['tests/unit/planner/**/*.test.ts', 'tests/reference/**/*.test.ts'],
    setupFiles: ['tests/setup.ts'],
    testTimeout: 3_600_000,
    pool: 'threads',
  },
});
