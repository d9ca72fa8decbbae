import { BaseSequencer, type TestSpecification } from 'vitest/node'
import { defineConfig } from 'vitest/config'

const tests = (process.env['MUTATE_TESTS'] ?? 'engineering,quantity').split(',')

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
    setupFiles: ['tests/seed.ts', 'tests/mutate/cover-anew.ts'],
    // Counting what is covered takes time; a change that loops for ever is stopped by Stryker.
    testTimeout: 600_000,
    hookTimeout: 600_000,
    // As in `npm test`: starting anew for each file takes half of the time.
    isolate: false,
    sequence: { sequencer: QuickFirst },
    include: tests.flatMap((name) => [`tests/${name}/**/*.test.ts`, `tests/${name}.test.ts`]),
    exclude: ['tests/checks/engine-errors.test.ts'],
  },
})
