import assert from 'node:assert/strict'
import { describe, it } from 'mocha'
import { commands, DiagnosticSeverity, TextEditorRevealType } from 'vscode'
import { codeOf, diagnosticsOnce, openJob } from './support/job.ts'
import { takePictures } from './support/picture.ts'

const planted = ['alignment/gap-variation-outside', 'phases/incomplete', 'cable/undersized']

describe('the survey launch as found', () => {
  it('shows its planted faults', async () => {
    const { document } = await openJob('survey-launch-as-found.wright')
    assert.equal(document.languageId, 'shaftwright')
    const diagnostics = await diagnosticsOnce(document.uri, (found) => {
      const codes = found.map(codeOf)
      return planted.every((code) => codes.includes(code))
    })
    for (const one of diagnostics.filter((found) => planted.includes(codeOf(found)))) {
      assert.equal(one.severity, DiagnosticSeverity.Error, codeOf(one))
      assert.equal(one.source, 'shaftwright')
      assert.ok(!one.range.isEmpty, `${codeOf(one)} marks something`)
    }
  })

  it('lists them in the Problems panel', async () => {
    const editor = await openJob('survey-launch-as-found.wright')
    const found = await diagnosticsOnce(editor.document.uri, (all) =>
      all.map(codeOf).includes('cable/undersized'),
    )
    const first = found.find(({ severity }) => severity === DiagnosticSeverity.Error)
    assert.ok(first)
    editor.revealRange(first.range, TextEditorRevealType.InCenter)
    await commands.executeCommand('workbench.actions.view.problems')
    await takePictures('problems', ['.squiggly-error', '.markers-panel .monaco-list-row >> nth=3'])
  })
})
