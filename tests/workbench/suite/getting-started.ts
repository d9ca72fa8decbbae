import assert from 'node:assert/strict'
import { describe, it } from 'mocha'
import { commands, window, workspace } from 'vscode'
import { diagnosticsOnce } from './support/job.ts'
import { takePictures } from './support/picture.ts'

describe('getting started', () => {
  it('is shown step by step', async () => {
    await commands.executeCommand('workbench.action.openWalkthrough', 'shaftwright.shaftwright#getStarted')
    await takePictures('get-started', ['.gettingStartedContainer'])
    await commands.executeCommand('workbench.action.closeActiveEditor')
  })

  it('begins with a copy of a demo job, which is checked', async () => {
    await commands.executeCommand('shaftwright.openDemoJob')
    const document = window.activeTextEditor?.document
    assert.ok(document?.isUntitled, 'it belongs to nobody yet')
    assert.equal(document.languageId, 'shaftwright')
    await diagnosticsOnce(document.uri, (found) => found.length > 5)
    await commands.executeCommand('workbench.action.revertAndCloseActiveEditor')
    assert.ok(!workspace.textDocuments.some(({ isDirty }) => isDirty))
  })
})
