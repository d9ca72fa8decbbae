// The rule that holds the floors apart is itself held: each forbidden import, tried alone, is named by its rule.
import { spawnSync } from 'node:child_process'
import { cpSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join, resolve } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'

const root = resolve(import.meta.dirname, '../..')
const house = mkdtempSync(join(tmpdir(), 'floors-'))

/** A file that is imported wrongly, and the rule that must say so. */
const forbidden = [
  ['server/src/quantity/a.ts', "import '../engineering/ground.ts'", 'floor-quantity'],
  ['server/src/engineering/a.ts', "import type { Ground } from '../syntax/ground.ts'", 'floor-engineering'],
  ['server/src/engineering/b.ts', "import 'zod'", 'libraries-engineering'],
  ['server/src/syntax/a.ts', "export type { Ground } from '../job/ground.ts'", 'floor-syntax'],
  ['server/src/syntax/b.ts', "import '../engineering/ground.ts'", 'words-do-not-compute'],
  ['server/src/vocabulary/a.ts', "export * from '../checks/ground.ts'", 'floor-vocabulary'],
  ['server/src/job/a.ts', "import fs from 'node:fs'", 'libraries-job'],
  ['server/src/job/b.ts', "void import('../areas/ground.ts')", 'floor-job'],
  ['server/src/job/c.ts', "import '../host/ground.ts'", 'floor-job'],
  ['server/src/checks/a.ts', "import '../areas/seal/ground.ts'", 'floor-checks'],
  ['server/src/checks/b.ts', "import process from 'node:process'", 'libraries-checks'],
  ['server/src/areas/seal/a.ts', "import '../../editor/ground.ts'", 'floor-areas'],
  ['server/src/areas/seal/b.ts', "import 'vscode-languageserver'", 'libraries-areas'],
  ['server/src/areas/seal/c.ts', "import '../electrical/ground.ts'", 'area-alone'],
  ['server/src/areas/seal/d.ts', "import '../ground.ts'", 'area-alone'],
  ['server/src/areas/seal/plans/a.ts', "import '../../../checks/ground.ts'", 'plans-without-checks'],
  ['server/src/areas/seal/plans/b.ts', "import '../ground.ts'", 'plans-without-checks'],
  ['server/src/areas/seal/plans/c.ts', "import 'zod'", 'libraries-areas'],
  ['server/src/areas/seal/checks/a.ts', "import 'zod'", 'libraries-areas'],
  ['server/src/areas/seal/commands/a.ts', "import fs from 'node:fs'", 'libraries-commands'],
  ['server/src/areas/seal/commands/b.ts', "import '../../../cli/ground.ts'", 'floor-areas'],
  ['server/src/areas/seal/commands/c.ts', "import '../../electrical/ground.ts'", 'area-alone'],
  ['server/src/areas/seal/index.ts', "import './commands/ok.ts'", 'commands-for-the-cli'],
  ['server/src/areas/index.ts', "import './commands.ts'", 'commands-for-the-cli'],
  ['server/src/editor/b.ts', "import '../areas/common/command.ts'", 'commands-for-the-cli'],
  ['server/src/areas/common/a.ts', "import '../seal/ground.ts'", 'area-alone'],
  ['server/src/areas/caution/a.ts', "import '../seal/ground.ts'", 'area-caution'],
  ['server/src/areas/across/a.ts', "import '../caution/ground.ts'", 'area-across'],
  ['server/src/host/a.ts', "import '../checks/ground.ts'", 'floor-host'],
  ['server/src/editor/a.ts', "import '../cli/ground.ts'", 'floor-editor'],
  ['server/src/cli/a.ts', "import '../../../client/src/ground.ts'", 'floor-cli'],
  ['client/src/a.ts', "import '../../server/src/editor/ground.ts'", 'client-talks-to-the-server'],
  ['server/src/cli/b.ts', "import './c.ts'", 'no-circles'],
  ['server/src/cli/d.ts', "import './missing.ts'", 'resolvable'],
] as const

/** Downwards, from the command line to the server it starts, and the far side of the circle above (reported once). */
const allowed = [
  ['server/src/engineering/ok.ts', "import '../quantity/ground.ts'\nimport 'ml-matrix'"],
  ['server/src/job/ok.ts', "import '../vocabulary/ground.ts'\nimport '../engineering/ground.ts'"],
  [
    'server/src/editor/ok.ts',
    "import '../checks/ground.ts'\nimport 'node:fs'\nimport 'vscode-languageserver/node'",
  ],
  ['server/src/checks/ok.ts', "import '../job/ground.ts'"],
  ['server/src/areas/ok.ts', "import './seal/ground.ts'"],
  ['server/src/areas/seal/checks/ok.ts', "import '../plans/ok.ts'\nimport '../../../checks/ground.ts'"],
  ['server/src/areas/seal/plans/ok.ts', "import '../../common/ground.ts'"],
  [
    'server/src/areas/seal/commands/ok.ts',
    "import 'zod'\nimport '../plans/ok.ts'\nimport '../../common/command.ts'",
  ],
  ['server/src/areas/common/command.ts', "import 'zod'"],
  ['server/src/areas/commands.ts', "import './seal/commands/ok.ts'"],
  ['server/src/areas/caution/ok.ts', "import '../electrical/ground.ts'"],
  ['server/src/areas/across/ok.ts', "import '../alignment/ground.ts'"],
  ['server/src/host/ok.ts', "import '../job/ground.ts'\nimport 'node:fs'"],
  ['server/src/cli/ok.ts', "import '../editor/ground.ts'\nimport '../areas/commands.ts'"],
  ['server/src/cli/c.ts', "import './b.ts'"],
] as const

const write = (file: string, text: string): void => {
  mkdirSync(join(house, dirname(file)), { recursive: true })
  writeFileSync(join(house, file), text)
}

let broken: string[] = []

beforeAll(() => {
  const floors = [
    'common',
    'quantity',
    'engineering',
    'syntax',
    'vocabulary',
    'job',
    'store',
    'checks',
    'areas',
    ...['common', 'alignment', 'electrical', 'seal', 'caution', 'across'].map((name) => `areas/${name}`),
    'host',
    'editor',
    'cli',
  ]
  for (const floor of floors) write(`server/src/${floor}/ground.ts`, 'export type Ground = string')
  write('client/src/ground.ts', 'export type Ground = string')
  for (const [file, text] of [...forbidden, ...allowed]) write(file, text)
  for (const name of ['package.json', '.dependency-cruiser.cjs']) cpSync(join(root, name), join(house, name))
  symlinkSync(join(root, 'node_modules'), join(house, 'node_modules'), 'junction')
  const cruise = join(root, 'node_modules/dependency-cruiser/bin/dependency-cruiser.mjs')
  const run = spawnSync(process.execPath, [cruise, '--output-type', 'json', 'server', 'client'], {
    cwd: house,
    encoding: 'utf8',
  })
  expect(run.stderr).toBe('')
  const { summary } = JSON.parse(run.stdout) as {
    summary: { violations: { from: string; rule: { name: string } }[] }
  }
  broken = summary.violations.map(({ from, rule }) => `${from} breaks ${rule.name}`)
})

afterAll(() => rmSync(house, { recursive: true, force: true }))

describe('the floors', () => {
  it.each(forbidden)('%s: %s breaks %s', (file, _text, rule) => {
    expect(broken).toContain(`${file} breaks ${rule}`)
  })

  it('let through what is allowed, and name nothing twice over', () => {
    expect([...new Set(broken)].sort()).toEqual(
      forbidden.map(([file, , rule]) => `${file} breaks ${rule}`).sort(),
    )
  })
})
