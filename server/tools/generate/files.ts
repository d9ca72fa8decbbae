import { spawnSync } from 'node:child_process'
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { dirname, join, resolve } from 'node:path'
import { schemas } from '../../src/cli/schemas.ts'
import { checkLists, checkPages } from './checks.ts'
import { grammar } from './grammar.ts'
import { inside } from './inside.ts'
import { loadChecks } from './load-checks.ts'
import { plausiblePage } from './plausible.ts'
import { reference } from './reference.ts'
import { resultPages } from './results.ts'
import { statusPage } from './status.ts'
import { versionModule } from './version.ts'

const root = resolve(import.meta.dirname, '../../..')
/** Folders that hold generated files only: whatever else is found there was left behind. */
const owned = ['docs/checks', 'docs/results', 'docs/schemas']

/** Text of every generated file, by its path from the root. */
export async function generatedFiles(): Promise<ReadonlyMap<string, string>> {
  const checks = await loadChecks(root)
  const all = {
    ...checkLists(root),
    'server/src/editor/version.ts': versionModule(root),
    ...checkPages(checks),
    'docs/reference.md': reference(),
    'docs/plausible.md': plausiblePage(),
    ...resultPages(),
    'docs/status.md': statusPage(checks),
    'server/src/syntax/inside.ts': inside(),
    'syntaxes/shaftwright.tmLanguage.json': grammar(),
    ...Object.fromEntries(
      Object.entries(schemas()).map(([name, schema]) => [`docs/schemas/${name}`, JSON.stringify(schema)]),
    ),
  }
  return new Map(Object.entries(all).map(([path, text]) => [path, inHouseStyle(path, text)]))
}

/** The formatter has the last word on code and JSON, so that what is generated passes the same lint as what is written. */
function inHouseStyle(path: string, text: string): string {
  if (path.endsWith('.md')) return text
  const biome = join(root, 'node_modules/@biomejs/biome/bin/biome')
  const run = spawnSync(process.execPath, [biome, 'format', `--stdin-file-path=${path}`], {
    cwd: root,
    encoding: 'utf8',
    input: text,
  })
  if (run.status !== 0) throw new Error(`Formatting ${path}: ${run.stderr}`)
  return run.stdout
}

export interface Stale {
  readonly path: string
  readonly why: 'missing' | 'differs' | 'left behind'
}

/** What on disk is not as generated. */
export function staleFiles(files: ReadonlyMap<string, string>): readonly Stale[] {
  const made = [...files].flatMap(([path, text]): Stale[] => {
    const file = join(root, path)
    if (!existsSync(file)) return [{ path, why: 'missing' }]
    return readFileSync(file, 'utf8') === text ? [] : [{ path, why: 'differs' }]
  })
  const left = owned
    .filter((folder) => existsSync(join(root, folder)))
    .flatMap((folder) => readdirSync(join(root, folder), { recursive: true, withFileTypes: true }))
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(root.length + 1))
    .map((path) => path.replaceAll('\\', '/'))
    .filter((path) => !files.has(path))
    .map((path): Stale => ({ path, why: 'left behind' }))
  return [...made, ...left]
}

/** Brings the disk in line, and says what had to be. */
export function write(files: ReadonlyMap<string, string>): readonly Stale[] {
  const stale = staleFiles(files)
  for (const { path, why } of stale) {
    const file = join(root, path)
    if (why === 'left behind') rmSync(file)
    else {
      mkdirSync(dirname(file), { recursive: true })
      writeFileSync(file, files.get(path) ?? '')
    }
  }
  return stale
}
