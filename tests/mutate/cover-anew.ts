// Test files share their modules here, and so what Stryker notes as covered. Each file is to report its own tests alone: with those before it too
// the reports grow with the square of the number of files, and take longer than the tests.
declare global {
  var __stryker__: { mutantCoverage?: { perTest: object } } | undefined
}

const covered = globalThis.__stryker__?.mutantCoverage
if (covered) covered.perTest = {}

export {}
