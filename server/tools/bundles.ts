// What ships is bundled: one file for each thing somebody else starts.
import { readdirSync } from 'node:fs'
import { copyFile, rm } from 'node:fs/promises'
import { join, resolve } from 'node:path'
import { type BuildOptions, build } from 'esbuild'
import { withoutExamples } from './without-examples.ts'

export const root = resolve(import.meta.dirname, '../..')
export const dist = join(root, 'dist')

/** CommonJS, because VS Code loads its extensions and their tests with `require`. */
const forVsCode: BuildOptions = {
  format: 'cjs',
  outExtension: { '.js': '.cjs' },
  external: ['vscode', 'mocha'],
}

/** Bundled CommonJS libraries ask for Node's own modules with `require`, which a module does not have by itself. */
const withRequire = {
  js: "import { createRequire } from 'node:module'; const require = createRequire(import.meta.url);",
}
const forNode: BuildOptions = { format: 'esm', banner: withRequire }

/** For VS Code in a browser: the extension as VS Code loads it there, and the server as a classic worker runs it. */
const forWeb: BuildOptions = { platform: 'browser', target: 'es2022' }

const shipped: readonly BuildOptions[] = [
  { ...forVsCode, entryPoints: { extension: 'client/src/extension.ts' } },
  { ...forNode, entryPoints: { server: 'server/src/editor/main-node.ts', cli: 'server/src/cli/main.ts' } },
  { ...forVsCode, ...forWeb, entryPoints: { 'extension-web': 'client/src/extension-web.ts' } },
  { ...forWeb, format: 'iife', entryPoints: { 'server-web': 'server/src/editor/main-web.ts' } },
]
const suite = 'tests/workbench/suite'
const tests: BuildOptions = {
  ...forVsCode,
  entryPoints: [`${suite}/*.ts`],
  outdir: join(dist, 'workbench'),
}

/** The same tests for a browser, where nothing reads a folder or brings Node's own modules. */
const testsForWeb = (): BuildOptions => ({
  ...forVsCode,
  ...forWeb,
  stdin: {
    contents: readdirSync(join(root, suite))
      .filter((name) => name.endsWith('.ts') && name !== 'index.ts')
      .map((name) => `import './${name}'`)
      .concat("export { run } from '../suite-web/run.ts'")
      .join('\n'),
    resolveDir: join(root, suite),
  },
  external: ['vscode'],
  alias: {
    'node:assert/strict': './tests/workbench/suite-web/assert.ts',
    mocha: './tests/workbench/suite-web/mocha.ts',
  },
  outdir: join(dist, 'workbench-web'),
  entryNames: 'suite',
})

/** Node 20 is what the oldest supported VS Code (1.91) brings. */
const common: BuildOptions = {
  absWorkingDir: root,
  outdir: dist,
  bundle: true,
  platform: 'node',
  target: 'node20',
  logLevel: 'warning',
  plugins: [withoutExamples],
  // Its entry is one block of everything; from its sources only what is used is taken.
  alias: { 'ml-matrix': './node_modules/ml-matrix/src/index.js' },
}

/** For people: readable, with source maps and the workbench tests. For the package: small, and nothing else. */
export const bundle = async (purpose: 'development' | 'package'): Promise<void> => {
  await rm(dist, { recursive: true, force: true })
  const options = purpose === 'package' ? { minify: true } : { sourcemap: true }
  const wanted = purpose === 'package' ? shipped : [...shipped, tests, testsForWeb()]
  await Promise.all(wanted.map((one) => build({ ...common, ...options, ...one })))
  // In a browser VS Code 1.91 adds `.js` to the name of an entry that does not end so.
  await copyFile(join(dist, 'extension-web.cjs'), join(dist, 'extension-web.cjs.js'))
}
