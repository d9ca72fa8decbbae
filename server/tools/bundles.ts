// What ships is bundled: one file for each thing somebody else starts.
import { readdirSync } from 'node:fs'
import { readdir, rm, writeFile } from 'node:fs/promises'
import { extname, join, resolve } from 'node:path'
import { type BuildOptions, build } from 'esbuild'
import { licencesOf } from './licences.ts'
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

export type Purpose = 'development' | 'package'

/** As VS Code loads its extension in a browser: 1.91 adds `.js` to any entry that does not end so; newer ones take `.js` for a module where the
 * manifest says that all are, as ours does for development and not in the package. */
export const webEntry: Readonly<Record<Purpose, string>> = {
  development: './dist/extension-web.cjs',
  package: './dist/extension-web.js',
}

/** For VS Code in a browser: the extension as VS Code loads it there, and the server as a classic worker runs it. */
const forWeb: BuildOptions = { platform: 'browser', target: 'es2022' }

const shippedFor = (purpose: Purpose): readonly BuildOptions[] => [
  { ...forVsCode, entryPoints: { extension: 'client/src/extension.ts' } },
  {
    ...forNode,
    entryPoints: { server: 'server/src/editor/main-node.ts' },
    outExtension: { '.js': '.mjs' },
  },
  { ...forNode, entryPoints: { cli: 'server/src/cli/main.ts' } },
  {
    ...forVsCode,
    ...forWeb,
    entryPoints: { 'extension-web': 'client/src/extension-web.ts' },
    outExtension: { '.js': extname(webEntry[purpose]) },
  },
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
  bundle: true,
  platform: 'node',
  target: 'node20',
  logLevel: 'warning',
  plugins: [withoutExamples],
  // Its entry is one block of everything; from its sources only what is used is taken.
  alias: { 'ml-matrix': './node_modules/ml-matrix/src/index.js' },
}

/** A package that was made before stays: it is whole in itself. */
async function clear(folder: string): Promise<void> {
  const old = await readdir(folder).catch(() => [])
  const made = old.filter((name) => !name.endsWith('.vsix'))
  await Promise.all(made.map((name) => rm(join(folder, name), { recursive: true })))
}

/** For people: readable, with source maps and the workbench tests. For the package: small, and nothing else. */
export const bundle = async (purpose: Purpose, outdir = dist): Promise<void> => {
  await clear(outdir)
  const options = purpose === 'package' ? { minify: true } : { sourcemap: true }
  const make = (one: BuildOptions) => build({ ...common, outdir, ...options, ...one, metafile: true })
  const shipped = await Promise.all(shippedFor(purpose).map(make))
  const metafiles = shipped.flatMap(({ metafile = [] }) => metafile)
  await writeFile(join(outdir, 'licences.txt'), licencesOf(metafiles, root))
  if (purpose === 'development') await Promise.all([tests, testsForWeb()].map(make))
}
