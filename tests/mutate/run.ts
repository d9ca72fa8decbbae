// npm run mutate -- FOLDER [TESTS] [--share 0.1 --seed 12]: changes the source of a folder at one place at a time and says which changes no test notices.
// TESTS: folders and files of tests/ that are run (`areas,checks/registry`), `engineering,quantity` unless given. With --share, that part of the changes, drawn with the seed.
import { spawnSync } from 'node:child_process'
import fs from 'node:fs'
import { parseArgs } from 'node:util'
import { isDrawn, type Mutant } from './draw.ts'

interface Report {
  readonly files: Record<
    string,
    { readonly source: string; readonly mutants: (Mutant & { readonly status: string })[] }
  >
}

const { positionals, values } = parseArgs({
  allowPositionals: true,
  options: {
    share: { type: 'string', default: '1' },
    seed: { type: 'string', default: '1' },
  },
})
const [folder, tests = 'engineering,quantity'] = positionals
if (!folder) throw new Error('name a folder: npm run mutate -- server/src/engineering/electrical')
const draw = { share: Number(values.share), seed: Number(values.seed) }
const begun = Date.now()

const stryker = 'node_modules/@stryker-mutator/core/bin/stryker.js'
const args = ['run', '.stryker.config.mjs', '--mutate', `${folder}/**/*.ts`]
const name = `${folder.replaceAll('/', '-')}-${draw.share}-${draw.seed}`
const env = {
  ...process.env,
  MUTATE_TESTS: tests,
  MUTATE_DRAW: `${draw.share},${draw.seed}`,
  MUTATE_NAME: name,
}
const { status } = spawnSync(process.execPath, [stryker, ...args], { stdio: 'inherit', env })
process.exitCode = status ?? 1

const { files }: Report = JSON.parse(fs.readFileSync(`.stryker/${name}.json`, 'utf8'))
const tally: Record<string, number> = {}
for (const [path, { source, mutants }] of Object.entries(files)) {
  for (const mutant of mutants) {
    if (mutant.status === 'Ignored' || !isDrawn(draw, path, mutant)) continue
    tally[mutant.status] = (tally[mutant.status] ?? 0) + 1
    if (mutant.status !== 'Survived' && mutant.status !== 'NoCoverage') continue
    const { start } = mutant.location
    const [change = ''] = (mutant.replacement ?? '').split('\n')
    console.log(`${path}:${start.line}:${start.column} ${mutant.status} ${mutant.mutatorName}: ${change}`)
    console.log(`    ${source.split('\n')[start.line - 1]?.trim()}`)
  }
}
console.log(tally, `${Math.round((Date.now() - begun) / 60_000)} minutes`)
