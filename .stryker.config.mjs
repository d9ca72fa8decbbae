const name = process.env.MUTATE_NAME ?? 'all'

/** @type {ConstructorParameters<typeof import('@stryker-mutator/core').Stryker>[0]} */
export default {
  testRunner: 'vitest',
  vitest: { configFile: '.vitest.mutate.config.ts' },
  plugins: ['@stryker-mutator/vitest-runner', './tests/mutate/draw.ts'],
  checkers: ['draw'],
  mutator: {
    // A text left out says nothing about a figure or a verdict. Words have tests of their own, of their shape rather than their letters
    // (tests/checks/words.test.ts), ids and names of blocks a registry and types.
    excludedMutations: ['StringLiteral'],
  },
  // It would read tsconfig.json with an interface that TypeScript 7 does not have.
  tsconfigFile: 'none',
  concurrency: 1,
  // On a busy machine the tests of all areas take longer than the five minutes it would wait.
  dryRunTimeoutMinutes: 30,
  incremental: true,
  incrementalFile: `.stryker/${name}.json`,
  tempDirName: `.stryker/sandbox-${name}`,
  // `run.ts` reads the incremental file, which is there after an interrupted run too.
  reporters: ['progress-append-only'],
  ignorePatterns: ['dist', '.workbench-out', '.stryker', 'docs/images'],
}
