import assert from 'node:assert/strict'
import { afterEach, describe, it } from 'mocha'
import type { Locator } from 'playwright-core'
import { linesInView, press, runCommand } from './support/person.ts'
import { page } from './support/session.ts'

const walkthrough = page.locator('.gettingStartedContainer')
const stepOf = (title: string) => walkthrough.locator('.getting-started-step').filter({ hasText: title })

/** Unfolds a step and clicks a button in it. */
const click = async (title: string, button: string): Promise<void> => {
  const step = stepOf(title)
  const shown = step.getByRole('button', { name: button, exact: true })
  if (!(await shown.isVisible())) await step.locator('.step-title').click()
  await shown.click()
}

/** Clicks until what the step shows is there: the page that was clicked may take the focus back, which closes it. A person clicks again. */
const clickUntil = async (title: string, button: string, shown: Locator): Promise<void> => {
  for (let asked = 0; asked < 6 && !(await shown.isVisible()); asked++) {
    await click(title, button)
    await shown.waitFor({ timeout: 8_000 }).catch(() => {})
  }
  await shown.waitFor()
}

const ticked = (title: string): Promise<void> => stepOf(title).locator('.codicon.complete').first().waitFor()
const isTicked = (title: string): Promise<boolean> =>
  stepOf(title).locator('.codicon.complete').first().isVisible()

const steps = [
  'Open a demo job',
  'See what is wrong',
  'Ask what a word means',
  'Get the plan',
  'Add a reading',
]

/** What is wider than the place it has. */
const cutOff = `[...document.querySelectorAll('.step-title, .step-description, .getting-started-step button, pre, p, td, li')]
  .filter((shown) => shown.clientWidth > 0 && shown.scrollWidth > shown.clientWidth + 1)
  .map((shown) => shown.textContent)`

describe('the walkthrough', () => {
  afterEach(async () => {
    await page.setViewportSize({ width: 1280, height: 800 })
  })

  it('acts on the demo job, and ticks each step when there was something to see', async () => {
    await runCommand('Shaftwright: Get Started')
    await stepOf('Open a demo job').waitFor()

    await click('Open a demo job', 'Open Demo Job')
    await page.locator('.view-line').filter({ hasText: 'Survey launch' }).first().waitFor()
    assert.ok(await walkthrough.isVisible(), 'the walkthrough stays beside it')
    await ticked('Open a demo job')
    assert.equal(await isTicked('See what is wrong'), false)

    const peek = page.locator('.peekview-widget, .zone-widget').filter({ hasText: 'problems' }).first()
    await clickUntil('See what is wrong', 'Next Finding', peek)
    await ticked('See what is wrong')
    const listed = page.locator('.markers-panel .monaco-list-row').first()
    await clickUntil('See what is wrong', 'List Findings', listed)
    await press('ControlOrMeta+j')
    await page.locator('.markers-panel').waitFor({ state: 'hidden' })

    const hover = page.locator('.monaco-hover:visible').filter({ hasText: 'dry-1' }).first()
    await clickUntil('Ask what a word means', 'Show Hover', hover)
    await ticked('Ask what a word means')

    await clickUntil('Get the plan', 'Show Plan', page.locator('.tab').filter({ hasText: 'Plan of' }))
    await ticked('Get the plan')

    const offered = page.locator('.suggest-widget.visible .monaco-list-row').filter({ hasText: 'reading' })
    await clickUntil('Add a reading', 'Show Suggestions', offered.first())
    await ticked('Add a reading')
    await press('Escape')

    const demos = page.locator('.tab').filter({ hasText: /^survey-launch(-\d+)?\.wright/ })
    assert.equal(await demos.count(), 1, 'one copy, in one place')
    assert.ok((await linesInView()).some((line) => line.includes('reading dry-1')))
  })

  it('cuts nothing off', async () => {
    await page.setViewportSize({ width: 1700, height: 950 })
    await runCommand('Shaftwright: Get Started')
    for (const title of steps) {
      await stepOf(title).locator('.step-title').click()
      await stepOf(title).locator('.step-description-container').first().waitFor()
      // The page beside the steps is a document of its own.
      await page.waitForTimeout(1_000)
      for (const frame of page.frames()) assert.deepEqual(await frame.evaluate(cutOff), [], title)
    }
  })
})
