import assert from 'node:assert/strict'
import { afterEach, describe, it } from 'mocha'
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

    await click('See what is wrong', 'Next Finding')
    await page.locator('.peekview-widget, .zone-widget').filter({ hasText: 'problems' }).first().waitFor()
    await ticked('See what is wrong')
    await click('See what is wrong', 'List Findings')
    await page.locator('.markers-panel .monaco-list-row').first().waitFor()
    await press('ControlOrMeta+j')
    await page.locator('.markers-panel').waitFor({ state: 'hidden' })

    const hover = page.locator('.monaco-hover:visible').filter({ hasText: 'dry-1' }).first()
    // VS Code closes a hover when the mouse or the focus moves meanwhile: a person clicks again.
    for (let asked = 0; asked < 5 && !(await hover.isVisible()); asked++) {
      await click('Ask what a word means', 'Show Hover')
      await hover.waitFor({ timeout: 5_000 }).catch(() => {})
    }
    await hover.waitFor()
    await ticked('Ask what a word means')

    await click('Get the plan', 'Show Plan')
    await page.locator('.tab').filter({ hasText: 'Plan of' }).waitFor()
    await ticked('Get the plan')

    await click('Add a reading', 'Show Suggestions')
    await page
      .locator('.suggest-widget.visible .monaco-list-row')
      .filter({ hasText: 'reading' })
      .first()
      .waitFor()
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
