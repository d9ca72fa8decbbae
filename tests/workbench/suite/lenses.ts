import assert from 'node:assert/strict'
import { describe, it } from 'mocha'
import {
  type CodeLens,
  commands,
  type InlayHint,
  Range,
  Selection,
  TextEditorRevealType,
  window,
} from 'vscode'
import { diagnosticsOnce, openJob, positionOf } from './support/job.ts'
import { takePictures } from './support/picture.ts'

const openAt = async (words: string) => {
  const editor = await openJob('survey-launch-as-built.wright')
  const { document } = editor
  await diagnosticsOnce(document.uri, (found) => found.length > 0)
  const at = positionOf(document, words)
  editor.selection = new Selection(at, at)
  editor.revealRange(editor.selection, TextEditorRevealType.InCenter)
  return { document, at }
}

const lensesAt = async (words: string) => {
  const { document, at } = await openAt(words)
  const lenses = await commands.executeCommand<CodeLens[]>('vscode.executeCodeLensProvider', document.uri)
  return lenses.flatMap(({ range, command }) => (range.start.line === at.line && command ? [command] : []))
}

const planShown = (): string | undefined =>
  window.visibleTextEditors
    .find(({ document }) => document.uri.scheme === 'shaftwright-plan')
    ?.document.getText()

describe('what a job file shows without being asked', () => {
  it('is what a move and a cable come to; no verdict, and no other units in a metric job', async () => {
    const { document } = await openAt('reading dry-2')
    const whole = new Range(0, 0, document.lineCount, 0)
    const hints = await commands.executeCommand<InlayHint[]>(
      'vscode.executeInlayHintProvider',
      document.uri,
      whole,
    )
    const words = hints.map(({ label }) => (typeof label === 'string' ? label : ''))
    for (const expected of [/^\(0\.33 mm\)$/, /A, can carry/])
      assert.ok(
        words.some((said) => expected.test(said)),
        String(expected),
      )
    assert.deepEqual(
      words.filter((said) => /outside|within| in\)$/.test(said)),
      [],
    )
  })

  it('is the verdict over a reading, and what changed since the one before', async () => {
    const titles = (await lensesAt('reading dry-2')).map(({ title }) => title)
    assert.deepEqual(titles.slice(0, 2), ['Within: 0.03, limit 0.10 mm', 'Plan'])
    assert.match(titles[2] ?? '', /^Since dry-1: /)
    await takePictures('lenses', ['.codelens-decoration:visible'])
  })
})

describe('the plan', () => {
  it('is shown beside the job file by the lens that leads to it', async () => {
    const plan = (await lensesAt('reading dry-2')).find(({ title }) => title === 'Plan')
    assert.ok(plan)
    await commands.executeCommand(plan.command, ...(plan.arguments ?? []))
    assert.match(planShown() ?? '', /^Vessel: .*^main dry-2: within its limits/ms)
    await takePictures('plan', ['.codelens-decoration:visible'])
    await commands.executeCommand('workbench.action.closeActiveEditor')
  })

  it('is shown by the palette for the drive the cursor is in', async () => {
    await openAt('propeller')
    await commands.executeCommand('shaftwright.showPlan')
    assert.match(planShown() ?? '', /^main afloat-1: within its limits/m)
    await commands.executeCommand('workbench.action.closeActiveEditor')
  })
})
