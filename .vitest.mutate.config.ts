import { defineConfig } from 'vitest/config'

const folders = (process.env['MUTATE_TESTS'] ?? 'engineering,quantity').split(',')

/** What `npm run mutate` runs. */
export default defineConfig({
  test: {
    setupFiles: ['tests/seed.ts'],
    testTimeout: 60_000,
    hookTimeout: 60_000,
    include: folders.map((folder) => `tests/${folder}/**/*.test.ts`),
  },
})
