/** @type {ConstructorParameters<typeof import('@stryker-mutator/core').Stryker>[0]} */
export default {
  testRunner: 'vitest',
  vitest: { configFile: '.vitest.mutate.config.ts' },
  plugins: ['@stryker-mutator/vitest-runner'],
  // It would read tsconfig.json with an interface that TypeScript 7 does not have.
  tsconfigFile: 'none',
  concurrency: 2,
  incremental: true,
  incrementalFile: '.stryker/incremental.json',
  tempDirName: '.stryker/sandbox',
  reporters: ['clear-text', 'json'],
  jsonReporter: { fileName: '.stryker/mutants.json' },
  clearTextReporter: { allowColor: false, reportTests: false, skipFull: true },
  ignorePatterns: ['dist', '.workbench-out', '.stryker', 'docs/images'],
}
