import assert from 'node:assert/strict'
import { describe, it } from 'mocha'
import { commands, DiagnosticSeverity, Uri, WorkspaceEdit, workspace } from 'vscode'
import { codeOf, diagnosticsOnce, openJob, positionOf } from './support/job.ts'

const differs = 'seal/shaft-size-differs'
const openFerry = async () => {
  const { document } = await openJob('twin-screw-ferry.wright')
  return { document, library: Uri.joinPath(document.uri, '../parts/drivetrain.wright') }
}
const thickerSeal = (text: string) => text.replace('shaft-size:      40 mm', 'shaft-size:      45 mm')

describe('a job that uses a library', () => {
  it('is checked again when the library is another on disk', async () => {
    const { document, library } = await openFerry()
    const before = await workspace.fs.readFile(library)
    const thicker = thickerSeal(new TextDecoder().decode(before))
    await workspace.fs.writeFile(library, new TextEncoder().encode(thicker))
    const found = await diagnosticsOnce(document.uri, (all) => all.map(codeOf).includes(differs))
    assert.equal(found.filter((one) => codeOf(one) === differs).length, 2)
    await workspace.fs.writeFile(library, before)
    await diagnosticsOnce(document.uri, (all) => !all.map(codeOf).includes(differs))
  })

  it('is checked again while the library is written', async () => {
    const { document, library } = await openFerry()
    const opened = await workspace.openTextDocument(library)
    const write = async (size: string): Promise<void> => {
      const { line } = positionOf(opened, 'shaft-size:')
      const edit = new WorkspaceEdit()
      edit.replace(library, opened.lineAt(line).range, `  shaft-size:      ${size}`)
      assert.ok(await workspace.applyEdit(edit))
    }
    await write('45 mm')
    await diagnosticsOnce(document.uri, (all) => all.map(codeOf).includes(differs))
    await write('40 mm')
    await diagnosticsOnce(document.uri, (all) => !all.map(codeOf).includes(differs))
    await opened.save()
  })

  it('has what it takes from the library renamed in both', async () => {
    const { document, library } = await openFerry()
    const rename = async (from: string, to: string) => {
      const edit = await commands.executeCommand<WorkspaceEdit>(
        'vscode.executeDocumentRenameProvider',
        document.uri,
        positionOf(document, from),
        to,
      )
      assert.ok(await workspace.applyEdit(edit))
      return edit.entries().map(([uri, edits]) => `${uri.path.split('/').at(-1)}: ${edits.length}`)
    }
    const changed = await rename('stock-40', 'stock-forty')
    assert.deepEqual(changed.sort(), ['drivetrain.wright: 1', 'twin-screw-ferry.wright: 1'])
    const opened = await workspace.openTextDocument(library)
    assert.match(opened.getText(), /^shaft stock-forty \{$/m)
    assert.match(document.getText(), /like: +stock-forty$/m)
    await rename('stock-forty', 'stock-40')
    await opened.save()
    await document.save()
    await diagnosticsOnce(document.uri, (all) =>
      all.every(({ severity }) => severity === DiagnosticSeverity.Information),
    )
  })
})
