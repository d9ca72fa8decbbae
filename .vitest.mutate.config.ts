import { BaseSequencer, type TestSpecification } from 'vitest/node'
import { defineConfig } from 'vitest/config'

const folders = (process.env['MUTATE_TESTS'] ?? 'engineering,quantity').split(',')

/** The run ends with the first test that fails, so the quick ones come first. */
class QuickFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const time = (file: TestSpecification) => {
      const path = file.moduleId.slice(this.ctx.config.root.length)
      return this.ctx.cache.getFileTestResults(`${file.project.name}:${path}`)?.duration ?? 0
    }
    return files.toSorted((a, b) => time(a) - time(b))
  }
}

/** What `npm run mutate` runs. */
export default defineConfig({
  test: {
    setupFiles: ['tests/seed.ts'],
    testTimeout: 60_000,
    hookTimeout: 60_000,
    // As in `npm test`: starting anew for each file takes half of the time.
    isolate: false,
    sequence: { sequencer: QuickFirst },
    include: folders.map((folder) => `tests/${folder}/**/*.test.ts`),
    exclude: ['tests/checks/engine-errors.test.ts'],
  },
})
