// npm run mutate -- FOLDER [TESTS]: changes the source of a folder at one place at a time and says which changes no test notices.
// TESTS: folders of tests/ that are run, `engineering,quantity` unless given.
import { spawnSync } from 'node:child_process'

const [folder, tests = 'engineering,quantity'] = process.argv.slice(2)
if (!folder) throw new Error('name a folder: npm run mutate -- server/src/engineering/electrical')
const stryker = 'node_modules/@stryker-mutator/core/bin/stryker.js'
const of = ['run', '.stryker.config.mjs', '--mutate', `${folder}/**/*.ts`]
const { status } = spawnSync(process.execPath, [stryker, ...of], {
  stdio: 'inherit',
  env: { ...process.env, MUTATE_TESTS: tests },
})
process.exitCode = status ?? 1
