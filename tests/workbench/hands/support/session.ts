// One workbench for all tests that type and click from outside. It opens when this module is first imported.
import { cpSync, createWriteStream, mkdirSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { openWorkbench } from '../../workbench.ts'

const root = resolve(import.meta.dirname, '../../../..')

/** Where screenshots of failed tests and the log go. */
export const out = resolve(process.env['WORKBENCH_OUT'] ?? join(root, '.workbench-out'))
mkdirSync(out, { recursive: true })
const log = createWriteStream(join(out, 'hands.log'))

const home = mkdtempSync(join(tmpdir(), 'shaftwright-'))

/** The folder the workbench shows: copies of the demo jobs, and what the tests put there. */
export const folder = join(home, 'jobs')
cpSync(join(root, 'docs/examples'), folder, { recursive: true })

const workbench = await openWorkbench({
  extension: root,
  folder,
  host: process.argv.includes('--web') ? 'browser' : 'computer',
  // What works in a folder that is not trusted works in any.
  trusts: false,
  settings: {
    'window.confirmBeforeClose': 'never',
    'security.workspace.trust.startupPrompt': 'never',
    'security.workspace.trust.banner': 'never',
  },
  onLog: (source, text) => log.write(`[${source}] ${text}\n`),
}).catch((error) => {
  rmSync(home, { recursive: true, force: true })
  throw error
})

/** The page of the workbench, for what the helpers of `person.ts` do not cover. */
export const { page, asked } = workbench
// A busy machine takes its time.
page.setDefaultTimeout(60_000)

export const closeWorkbench = async (): Promise<void> => {
  await workbench.close()
  rmSync(home, { recursive: true, force: true })
}
