import assert from 'node:assert/strict'
import { describe, it } from 'mocha'
import { commands, Range, Selection, type TextDocument, WorkspaceEdit, window, workspace } from 'vscode'
import { openJob, positionOf } from './support/job.ts'

const planDocument = (): TextDocument => {
  const found = window.visibleTextEditors.find(({ document }) => document.uri.scheme === 'shaftwright-plan')
  assert.ok(found, 'a plan is shown')
  return found.document
}

/** Resolves as soon as the plan that is shown holds what is waited for. */
const planOnce = async (holds: (text: string) => boolean): Promise<string> => {
  const { promise, resolve } = Promise.withResolvers<string>()
  const look = (): void => {
    const text = planDocument().getText()
    if (holds(text)) resolve(text)
  }
  const listening = workspace.onDidChangeTextDocument(look)
  look()
  return promise.finally(() => listening.dispose())
}

const showPlan = async (name: string, words: string): Promise<TextDocument> => {
  const editor = await openJob(name)
  const at = positionOf(editor.document, words)
  editor.selection = new Selection(at, at)
  await commands.executeCommand('shaftwright.showPlan')
  return editor.document
}

const replace = async (document: TextDocument, from: string, to: string): Promise<void> => {
  const at = document.getText().indexOf(from)
  assert.ok(at >= 0, from)
  const range = new Range(document.positionAt(at), document.positionAt(at + from.length))
  const edit = new WorkspaceEdit()
  edit.replace(document.uri, range, to)
  assert.ok(await workspace.applyEdit(edit))
}

const firstLine = (text: string): string => text.split('\n', 1)[0] ?? ''

describe('a plan in view', () => {
  it('names vessel, job, revision, date and file, and is read-only text', async () => {
    await showPlan('survey-launch-as-found.wright', 'reading dry-1')
    const document = planDocument()
    assert.match(
      document.getText(),
      /^Vessel: +Launch 07\nJob: +Survey launch 07.*\nRevision: +B \(.*\)\nDate: +\d{4}-\d\d-\d\d\nFile: +survey-launch-as-found\.wright\n\nmain dry-1: outside/,
    )
    assert.equal(document.languageId, 'shaftwright-plan')
    assert.equal(workspace.fs.isWritableFileSystem(document.uri.scheme), false)
    await commands.executeCommand('workbench.action.closeActiveEditor')
  })

  it('follows the job as it is written', async () => {
    const job = await showPlan('survey-launch-as-found.wright', 'reading dry-1')
    const before = planDocument().getText()
    const [gaps = ''] = /gaps: +top [\d.]+/.exec(job.getText()) ?? []
    const wider = `${gaps.replace(/[\d.]+$/, '')}${(Number(/[\d.]+$/.exec(gaps)?.[0]) + 0.2).toFixed(2)}`
    await replace(job, gaps, wider)
    const after = await planOnce((text) => text !== before)
    assert.match(after, /^Vessel: /)
    await replace(job, wider, gaps)
    await planOnce((text) => text === before)
  })

  it('says in its first line that it is of an earlier state when its drive is gone', async () => {
    const job = await showPlan('survey-launch-as-found.wright', 'propeller {')
    const before = planDocument().getText()
    await replace(job, 'drive main {', 'drive aft {')
    const old = await planOnce((text) => text.startsWith('Out of date'))
    assert.match(
      firstLine(old),
      /^Out of date: this plan was made at \d{4}-\d\d-\d\d \d\d:\d\d:\d\d\. The job no longer has main\.$/,
    )
    assert.ok(old.includes(before.trimEnd()))
    await replace(job, 'drive aft {', 'drive main {')
    await planOnce((text) => text === before)
  })

  it('follows a library that the job uses', async () => {
    await showPlan('twin-screw-ferry.wright', 'drive port')
    const before = planDocument().getText()
    const [library] = await workspace.findFiles('parts/drivetrain.wright')
    assert.ok(library)
    const opened = await workspace.openTextDocument(library)
    const [limit = ''] = /gap-variation: +max [\d.]+/.exec(opened.getText()) ?? []
    const tight = limit.replace(/[\d.]+$/, '0.01')
    await replace(opened, limit, tight)
    await planOnce((text) => text !== before && text.startsWith('Vessel'))
    await replace(opened, tight, limit)
    await planOnce((text) => text === before)
    await opened.save()
  })

  it('is asked for again after the server was restarted', async () => {
    const job = await showPlan('survey-launch-as-found.wright', 'propeller {')
    await planOnce((text) => text.startsWith('Vessel'))
    await commands.executeCommand('shaftwright.restartServer')
    await planOnce((text) => text.startsWith('Vessel'))
    const [revision = ''] = /revision: +"B"/.exec(job.getText()) ?? []
    const later = revision.replace('B', 'Z')
    await replace(job, revision, later)
    await planOnce((text) => /^Revision: +Z /m.test(text))
    await replace(job, later, revision)
    await job.save()
    await commands.executeCommand('workbench.action.closeAllEditors')
  })
})
