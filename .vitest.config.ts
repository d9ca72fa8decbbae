import { defineConfig } from 'vitest/config'

/** They put another module in the place of one, which no other test may see: a disk, and formulas that fail. */
const withOwnModules = ['tests/cli/windows.test.ts', 'tests/checks/engine-errors.test.ts']

export default defineConfig({
  test: {
    setupFiles: ['tests/seed.ts'],
    // By itself one core is left to the editor that watches; nothing watches here.
    maxWorkers: '100%',
    testTimeout: 60_000,
    hookTimeout: 60_000,
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          include: ['tests/**/*.test.ts'],
          exclude: withOwnModules,
          // Starting anew for each file takes half of the time, and no module keeps what one test has done.
          isolate: false,
        },
      },
      { extends: true, test: { name: 'own modules', include: withOwnModules } },
    ],
  },
})
