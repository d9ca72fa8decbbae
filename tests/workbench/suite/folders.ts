// A folder with a library in it is deleted, moved and renamed; the editor's own watcher reports it.
import assert from 'node:assert/strict'
import { describe, it } from 'mocha'
import { commands, type TextDocument, Uri, WorkspaceEdit, workspace } from 'vscode'
import { codeOf, diagnosticsOnce, openJob } from './support/job.ts'

const missing = 'job/file-not-found'

const openFerry = async () => {
  const { document } = await openJob('twin-screw-ferry.wright')
  const parts = Uri.joinPath(document.uri, '../parts')
  await found(document, false)
  return { document, parts, away: Uri.joinPath(parts, '../parts-2') }
}

const found = ({ uri }: TextDocument, isMissing: boolean) =>
  diagnosticsOnce(uri, (all) => all.length > 0 && all.map(codeOf).includes(missing) === isMissing)

const applied = async (change: (edit: WorkspaceEdit) => void): Promise<void> => {
  const edit = new WorkspaceEdit()
  change(edit)
  assert.ok(await workspace.applyEdit(edit))
}

describe('the folder of a library', () => {
  it('is noticed when it is renamed on disk, and when it is back', async () => {
    const { document, parts, away } = await openFerry()
    await workspace.fs.rename(parts, away)
    await found(document, true)
    await workspace.fs.rename(away, parts)
    await found(document, false)
  })

  it('is noticed when it is deleted on disk, and when it is back', async () => {
    const { document, parts, away } = await openFerry()
    await workspace.fs.copy(parts, away)
    await workspace.fs.delete(parts, { recursive: true })
    await found(document, true)
    await workspace.fs.rename(away, parts)
    await found(document, false)
  })

  it('is noticed when it is deleted in the explorer, and when it is back', async () => {
    const { document, parts, away } = await openFerry()
    await workspace.fs.copy(parts, away)
    await applied((edit) => edit.deleteFile(parts, { recursive: true }))
    await found(document, true)
    await applied((edit) => edit.renameFile(away, parts))
    await found(document, false)
  })

  it('takes the path in the job along when it is renamed in the explorer', async () => {
    const { document, parts, away } = await openFerry()
    const before = document.getText()
    await applied((edit) => edit.renameFile(parts, away))
    assert.equal(document.getText(), before.replace('"parts/', '"parts-2/'))
    await found(document, false)
    await applied((edit) => edit.renameFile(away, parts))
    assert.equal(document.getText(), before)
    await found(document, false)
    await document.save()
    await commands.executeCommand('workbench.action.closeAllEditors')
  })
})
