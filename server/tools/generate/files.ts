import { spawnSync } from 'node:child_process'
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { dirname, join, resolve } from 'node:path'
import { checkPages } from './check-pages.ts'
import { checksIndex } from './checks-index.ts'
import { grammar } from './grammar.ts'
import { loadChecks } from './load-checks.ts'
import { reference } from './reference.ts'

const root = resolve(import.meta.dirname, '../../..')
/** Folder that holds generated files only: whatever else is found there was left behind. */
const owned = 'docs/checks'

/** Text of every generated file, by its path from the root. */
export async function generatedFiles(): Promise<ReadonlyMap<string, string>> {
  const checks = await loadChecks(join(root, 'server/src/checks'))
  return new Map([
    ['server/src/checks/index.ts', inHouseStyle('index.ts', checksIndex(checks.map(({ id }) => id)))],
    ...[...checkPages(checks.map(({ check }) => check))].map(
      ([name, text]) => [`${owned}/${name}`, text] as const,
    ),
    ['docs/reference.md', reference()],
    [
      'syntaxes/shaftwright.tmLanguage.json',
      inHouseStyle('grammar.json', JSON.stringify(grammar(), undefined, 2)),
    ],
  ])
}

/** The formatter has the last word on code and JSON, so that what is generated passes the same lint as what is written. */
function inHouseStyle(name: string, text: string): string {
  const biome = join(root, 'node_modules/@biomejs/biome/bin/biome')
  const arguments_ = [biome, 'format', `--stdin-file-path=server/tools/generate/${name}`]
  const run = spawnSync(process.execPath, arguments_, { cwd: root, encoding: 'utf8', input: text })
  if (run.status !== 0) throw new Error(`Formatting ${name}: ${run.stderr}`)
  return run.stdout
}

export interface Stale {
  readonly path: string
  readonly why: 'missing' | 'differs' | 'left behind'
}

/** What on disk is not as generated. */
export function staleFiles(files: ReadonlyMap<string, string>): readonly Stale[] {
  const stale: Stale[] = []
  for (const [path, text] of files) {
    const file = join(root, path)
    if (!existsSync(file)) stale.push({ path, why: 'missing' })
    else if (readFileSync(file, 'utf8') !== text) stale.push({ path, why: 'differs' })
  }
  const folder = join(root, owned)
  const found = existsSync(folder) ? readdirSync(folder, { recursive: true, withFileTypes: true }) : []
  for (const entry of found) {
    const path = join(entry.parentPath, entry.name)
      .slice(root.length + 1)
      .replaceAll('\\', '/')
    if (entry.isFile() && !files.has(path)) stale.push({ path, why: 'left behind' })
  }
  return stale
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
