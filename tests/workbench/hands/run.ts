// npm run test:hands: tests that type and click as a person does, all in one workbench.
// `npm run test:hands -- plan` runs plan.hands.ts alone, `long/demos` one that takes too long for each day; `--grep WORDS` runs the tests with these words in the title.
import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import { parseArgs } from 'node:util'
import Mocha from 'mocha'
import { closeEditors, openFile, press, squiggle } from './support/person.ts'
import { closeWorkbench, out, page } from './support/session.ts'

const { values, positionals } = parseArgs({
  // `web` is read where the workbench is opened.
  options: { grep: { type: 'string' }, web: { type: 'boolean' } },
  allowPositionals: true,
})

const mocha = new Mocha({
  ui: 'bdd',
  timeout: 180_000,
  slow: 10_000,
  // On a busy machine VS Code itself loses a focus or a hover now and then. What fails twice is our fault; the log names what was tried again.
  retries: 1,
  ...(values.grep && { fgrep: values.grep }),
})
const suffix = '.hands.ts'
const names = readdirSync(import.meta.dirname)
  .filter((name) => name.endsWith(suffix))
  .sort()
const wanted = positionals.length === 0 ? names : positionals.map((name) => `${name}${suffix}`)
for (const name of wanted) mocha.addFile(join(import.meta.dirname, name))

mocha.rootHooks({
  async beforeAll() {
    // The first finding shows that the extension and its server run.
    await openFile('first.wright', 'first {\n}\n')
    await squiggle('error')
    await closeEditors()
  },
  async afterEach(this: Mocha.Context) {
    const test = this.currentTest
    const picture = join(out, `hands ${test?.fullTitle().replaceAll(/\W+/g, ' ')}.png`)
    if (test?.isFailed()) await page.screenshot({ path: picture })
    await closeEditors()
    if (await page.locator('.part.panel').isVisible()) await press('Control+j')
  },
})

try {
  await mocha.loadFilesAsync()
  process.exitCode = await new Promise<number>((done) => {
    const runner = mocha.run((failures) => done(failures > 0 ? 1 : 0))
    runner.on('retry', (test: Mocha.Test, error: Error) =>
      console.log(`      tried again: ${test.fullTitle()}: ${error.message}`),
    )
  })
} finally {
  await closeWorkbench()
}
