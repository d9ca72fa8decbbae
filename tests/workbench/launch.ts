#!/usr/bin/env node
// Stands in for the desktop executable of VS Code: the same arguments, the same exit codes.
import { createWriteStream, mkdirSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import type { Picture } from './suite/support/picture.ts'
import { openWorkbench, problem, type Workbench } from './workbench.ts'

const argument = (name: string): string => {
  const found = process.argv.find((one) => one.startsWith(`--${name}=`))
  if (!found) throw new Error(`--${name}= is missing.`)
  return found.slice(name.length + 3)
}
const out = resolve(process.env['WORKBENCH_OUT'] ?? '.workbench-out')
const limit = Number(process.env['WORKBENCH_TIMEOUT_S'] ?? 180)
mkdirSync(out, { recursive: true })
const log = createWriteStream(join(out, 'workbench.log'))

let workbench: Workbench | undefined
let shots = Promise.resolve()
const shoot = async (name: string, visible: readonly string[] = []): Promise<void> => {
  try {
    for (const selector of visible)
      await workbench?.page.locator(selector).first().waitFor({ timeout: 15_000 })
    // Colours come a little after the words.
    await sleep(500)
    await workbench?.page.screenshot({ path: join(out, `${name}.png`) })
  } catch (error) {
    log.write(`[shot] ${error}\n`)
  }
}
const onLog = (source: string, text: string): void => {
  log.write(`[${source}] ${text}\n`)
  if (text.startsWith('[suite] ')) console.log(text.slice('[suite] '.length))
  if (!text.startsWith('[shot] ')) return
  const { name, visible } = JSON.parse(text.slice('[shot] '.length)) as Picture
  shots = shots.then(() => shoot(name, visible))
}
for (const signal of ['SIGINT', 'SIGTERM'] as const) {
  process.once(signal, async () => {
    await workbench?.close()
    process.exit(130)
  })
}

let code: number = problem.notStarted
try {
  workbench = await openWorkbench({
    extension: argument('extensionDevelopmentPath'),
    tests: argument('extensionTestsPath'),
    folder: process.argv.slice(2).find((one) => !one.startsWith('-')) ?? '.',
    host: process.env['WORKBENCH_HOST'] === 'browser' ? 'browser' : 'computer',
    settings: {
      // Read by the suite, which has no environment in a browser.
      'workbenchSuite.pictures': out,
      'workbenchSuite.themes': process.env['WORKBENCH_THEMES']?.split(' ') ?? [],
    },
    onLog,
  })
  code = await Promise.race([workbench.exit, sleep(limit * 1000, problem.tooLate)])
  await shots
  if (code >= problem.pageCrashed) await shoot('failed')
} catch (error) {
  console.error(error)
} finally {
  await workbench?.close()
}
if (code >= problem.pageCrashed)
  console.error(`Workbench problem ${code}: see workbench.log and failed.png in ${out}`)
process.exit(code)
