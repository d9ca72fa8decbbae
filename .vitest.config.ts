import { defineConfig } from 'vitest/config'

/** It puts another disk in the place of Node's, which no other test may see. */
const withOwnModules = ['tests/cli/windows.test.ts']

export default defineConfig({
  test: {
    setupFiles: ['tests/seed.ts'],
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
