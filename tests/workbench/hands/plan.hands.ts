import assert from 'node:assert/strict'
import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, it } from 'mocha'
import { goTo, lenses, openFile, press, quickFix, runCommand, savedText, type } from './support/person.ts'
import { folder, page } from './support/session.ts'

const job = 'survey-launch-as-found.wright'
const group = `.editor-group-container:has(.tab[data-resource-name^="Plan of"])`

/** The lines of the plan that are in view, from the top. */
const planLines = async (): Promise<readonly string[]> => {
  const lines = await page.evaluate(`[...document.querySelectorAll('${group} .view-line')]
    .map((line) => [line.offsetTop, line.textContent])
    .sort(([a], [b]) => a - b)
    .map(([, text]) => text)`)
  return (lines as readonly string[]).map((text) => text.replaceAll('\u00a0', ' ').trim())
}

/** The lines of the plan in view, once they are what is waited for. */
const planOnce = async (holds: (lines: readonly string[]) => boolean): Promise<readonly string[]> => {
  const deadline = Date.now() + 60_000
  for (;;) {
    const lines = await planLines()
    if (holds(lines)) return lines
    if (Date.now() > deadline) throw new Error(`The plan still reads:\n${lines.join('\n')}`)
    await page.waitForTimeout(200)
  }
}
const isPlan = (lines: readonly string[]): boolean => lines[0]?.startsWith('Vessel:') === true

/** Back to the job, which is open beside the plan. */
const clickJob = async (): Promise<void> => {
  await page.locator(`.tab[data-resource-name="${job}"]`).click()
  await page.locator('.monaco-editor.focused').waitFor()
}

const fresh = readFileSync(join(folder, job), 'utf8')
const openJob = async (words: string): Promise<void> => {
  await openFile(job, fresh)
  await goTo(job, words)
  // The server has seen the job.
  await lenses()
}

describe('a plan beside the job', () => {
  it('opens by its button, and is another after the move was written into the job', async () => {
    await openJob('reading dry-1')
    await page.locator('.editor-group-container.active .editor-actions [aria-label^="Show Plan"]').click()
    const before = await planOnce(isPlan)
    assert.ok(before.some((line) => line.startsWith('File:') && line.includes(job)))
    await clickJob()
    await goTo(job, 'gaps:    top 1.92')
    await quickFix('Write this move')
    const moved = await planOnce((lines) => lines.join() !== before.join())
    assert.match(moved[0] ?? '', /^(Vessel:|Out of date:)/)
    assert.match(await savedText(job), /move after dry-1 \{/)
    await goTo(job, 'revision:    "B')
    await type('7')
    await planOnce((lines) => lines.some((line) => /^Revision: +B7 /.test(line)))
  })

  it('opens by its keys, and says in its first line when its drive is gone', async () => {
    await openJob('propeller {')
    await press('Control+k', 'v')
    await planOnce(isPlan)
    await clickJob()
    await goTo(job, 'drive main')
    await type('x')
    await planOnce(([first]) => first?.startsWith('Out of date: this plan was made at ') === true)
    await press('Backspace')
    await planOnce(isPlan)
  })

  it('is there again after the window was loaded anew, and follows the job', async () => {
    await openJob('propeller {')
    await press('Control+k', 'v')
    const before = await planOnce(isPlan)
    await page.evaluate('window.isOld = true')
    await runCommand('Developer: Reload Window')
    await page.waitForFunction('!window.isOld && document.querySelector(".tab.active")')
    assert.deepEqual(await planOnce(isPlan), before)
    await clickJob()
    await goTo(job, 'revision:    "B')
    await type('7')
    await planOnce((lines) => lines.some((line) => /^Revision: +B7 /.test(line)))
  })

  it('has a language that nobody can choose', async () => {
    await openJob('propeller {')
    await press('Control+k', 'm')
    await page.keyboard.insertText('Shaftwright')
    const rows = page.locator('.quick-input-list .monaco-list-row')
    await rows.filter({ hasText: '(shaftwright)' }).waitFor()
    assert.deepEqual(await rows.filter({ hasText: 'plan' }).allTextContents(), [])
    await press('Escape')
  })
})

describe('the demo job', () => {
  it('is saved under a name of its own, over no other file', async () => {
    writeFileSync(join(folder, 'survey-launch.wright'), 'job "Mine" { vessel: "V" }\n')
    await runCommand('Shaftwright: Open Demo Job')
    await page.locator('.tab.active').filter({ hasText: 'survey-launch-2.wright' }).waitFor()
    assert.ok(!existsSync(join(folder, 'survey-launch-2.wright')))
    assert.equal(await savedText('survey-launch-2.wright'), fresh)
    assert.match(readFileSync(join(folder, 'survey-launch.wright'), 'utf8'), /Mine/)
  })
})
