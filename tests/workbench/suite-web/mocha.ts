// Mocha as it comes for browsers: it gives its words to the global scope.
import '../../../node_modules/mocha/mocha.js'
import { print } from '../suite/support/print.ts'

const { Mocha } = globalThis as unknown as { Mocha: typeof import('mocha') }
const { mocha } = globalThis as unknown as { mocha: BrowserMocha }
type BrowserMocha = {
  setup: (options: Mocha.MochaOptions) => void
  run: (done: (failures: number) => void) => void
}

Object.assign(Mocha.reporters.Base, { consoleLog: print })
mocha.setup({ ui: 'bdd', reporter: 'spec', timeout: 30_000, color: false })

export const { afterEach, describe, it } = globalThis as unknown as typeof import('mocha')
export const runAll = (): Promise<number> => new Promise((done) => mocha.run(done))
