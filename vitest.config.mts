import { defineConfig } from 'vitest/config';

/** The workbench tests need a browser and a packed extension, so they are a project of their own. */
export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: 'unit',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/workbench/**', '**/node_modules/**'],
          // No test is about time; a slow or busy machine must not fail one.
          testTimeout: 60_000,
          // Nor is any about the day on which it runs; those that are say which day it is.
          env: { LENTIL_TODAY: 'none' },
        },
      },
      {
        test: {
          name: 'workbench',
          include: ['tests/workbench/**/*.test.ts'],
          globalSetup: ['tests/workbench/set-up.ts'],
          fileParallelism: false,
          testTimeout: 120_000,
          hookTimeout: 600_000,
        },
      },
    ],
  },
});
