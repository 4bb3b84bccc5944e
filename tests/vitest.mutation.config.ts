import { defineConfig } from 'vitest/config';

/**
 * The tests of the planner alone, for mutation testing. Counting which test meets which mutant makes them many times slower.
 * The published seasons take as long as all the rest and are left out: a score of the optimiser is the lower for it.
 */
export default defineConfig({
  test: {
    include: ['tests/unit/planner/**/*.test.ts', 'tests/reference/**/*.test.ts'],
    exclude: ['tests/unit/planner/season/optimise/published-seasons.test.ts'],
    setupFiles: ['tests/setup.ts'],
    testTimeout: 3_600_000,
    pool: 'threads',
  },
});
