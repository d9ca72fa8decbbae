// What VS Code runs: every test file built beside this one.
import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import Mocha from 'mocha'
import { print } from './support/print.ts'

export const run = async (): Promise<void> => {
  Object.assign(Mocha.reporters.Base, { consoleLog: print })
  const mocha = new Mocha({ ui: 'bdd', timeout: 30_000, color: false })
  for (const name of readdirSync(__dirname).sort()) {
    if (name.endsWith('.cjs') && name !== 'index.cjs') mocha.addFile(join(__dirname, name))
  }
  const failures = await new Promise<number>((done) => mocha.run(done))
  if (failures > 0) throw new Error(`${failures} failed`)
}
