// What VS Code runs: every test file built beside this one. Lines that begin with [suite] reach the terminal.
import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import { format } from 'node:util'
import Mocha from 'mocha'

const print = (...words: unknown[]): void => {
  for (const line of format(...words).split('\n')) console.log(`[suite] ${line}`)
}

export const run = async (): Promise<void> => {
  Object.assign(Mocha.reporters.Base, { consoleLog: print })
  const mocha = new Mocha({ ui: 'bdd', timeout: 30_000, color: false })
  for (const name of readdirSync(__dirname).sort()) {
    if (name.endsWith('.cjs') && name !== 'index.cjs') mocha.addFile(join(__dirname, name))
  }
  const failures = await new Promise<number>((done) => mocha.run(done))
  if (failures > 0) throw new Error(`${failures} failed`)
}
