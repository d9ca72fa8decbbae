import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import {
  type CodeAction,
  CodeActionRequest,
  DidChangeTextDocumentNotification,
  LSPErrorCodes,
  type Range,
  type SnippetTextEdit,
  type TextDocumentEdit,
  type TextEdit,
} from 'vscode-languageserver'
import { allChecks } from '../../server/src/areas/index.ts'
import { Checker } from '../../server/src/checks/run.ts'
import { fixAll } from '../../server/src/editor/code-actions/code-actions.ts'
import { Analysis } from '../../server/src/job/analysis.ts'
import { openDocument } from '../../server/src/job/document.ts'
import { linkFile } from '../../server/src/job/files.ts'
import { type Client, startProcess } from './client.ts'

const uri = 'untitled:Untitled-1'
const text = `drive main {
  seal {
    free-lenght: 148 mm
    compression: 26 mm +3/-2 mm
    compression: 26 mm +3/-2 mm
  }
  coupling {
    kind: rigid
  }
}


job "Launch" { vessel: "Launch 07"  status: draft }
`

/** Offers at a line (LSP 3.18, textDocument/codeAction). */
async function offers(
  client: Client,
  line: number,
  context: object = {},
  of = uri,
): Promise<readonly CodeAction[]> {
  const range: Range = { start: { line, character: 0 }, end: { line, character: 80 } }
  const params = { textDocument: { uri: of }, range, context: { diagnostics: [], ...context } }
  return (await client.connection.sendRequest(CodeActionRequest.type, params)) as CodeAction[]
}

const editsOf = ({ edit }: CodeAction) => (edit?.documentChanges?.[0] as TextDocumentEdit | undefined)?.edits

describe('quick fixes over the wire', () => {
  let process: Awaited<ReturnType<typeof startProcess>>
  let client: Client
  beforeAll(async () => {
    const workspaceEdit = { documentChanges: true, snippetEditSupport: true }
    const codeAction = { codeActionLiteralSupport: { codeActionKind: { valueSet: ['quickfix'] } } }
    process = await startProcess({
      capabilities: { workspace: { workspaceEdit }, textDocument: { codeAction } },
    })
    client = process.client
    client.open(uri, text)
  })
  afterAll(async () => expect(await process.stop()).toBe(0))

  it('are there, by kind', () => {
    expect(client.initialized.capabilities.codeActionProvider).toEqual({
      codeActionKinds: ['quickfix', 'source.fixAll.shaftwright'],
    })
  })

  it('put a misspelt word right, for the version they were worked out on', async () => {
    const { diagnostics } = await client.published(uri)
    const [first] = await offers(client, 2, { diagnostics })
    expect(first).toMatchObject({ title: 'Write free-length', kind: 'quickfix', isPreferred: true })
    expect(first?.diagnostics).toEqual(diagnostics.filter(({ code }) => code === 'job/fact-unknown'))
    expect(first?.edit?.documentChanges?.[0]).toMatchObject({ textDocument: { uri, version: 1 } })
  })

  it('are few of many, and an edit does not wait for them', async () => {
    const many = 'untitled:Many'
    const lines = Array.from({ length: 2000 }, (_, i) => `  cable c${i} { length: 2 }\n`)
    client.open(many, `drive main {\n${lines.join('')}}\n`)
    const everything: Range = { start: { line: 0, character: 0 }, end: { line: 2002, character: 0 } }
    const params = { textDocument: { uri: many }, range: everything, context: { diagnostics: [] } }
    const offered = (await client.connection.sendRequest(CodeActionRequest.type, params)) as CodeAction[]
    expect(offered.length).toBeGreaterThan(3)
    expect(offered.length).toBeLessThanOrEqual(200)
    const asked = client.connection.sendRequest(CodeActionRequest.type, params)
    void client.connection.sendNotification(DidChangeTextDocumentNotification.type, {
      textDocument: { uri: many, version: 2 },
      contentChanges: [{ text: 'drive main { }\n' }],
    })
    await expect(asked).rejects.toMatchObject({ code: LSPErrorCodes.ContentModified })
  }, 60_000)

  it('leave a blank where only the person knows the figure', async () => {
    const add = (await offers(client, 6)).find(({ title }) => title === 'Add flange-diameter')
    const [edit] = (add && editsOf(add)) ?? []
    expect((edit as SnippetTextEdit).snippet.value).toMatch(/flange-diameter: \$\{1:\?\}/)
    // From the margin on, so that the editor does not indent what is indented already.
    expect((edit as SnippetTextEdit).range.start.character).toBe(0)
  })

  it('write what a drive does not take from another, each a blank, in the order of the work', async () => {
    const twin = 'untitled:Twin'
    client.open(
      twin,
      `drive port {
  propeller { diameter: 420 mm  turns: left-hand }
  seal { free-length: 148 mm [measured] }
  phase-map { A to U, B to V, C to W }
}

drive starboard {
  like: port

  seal { fitted-length: 121 mm }
}
`,
    )
    const [add, ...more] = (await offers(client, 7, {}, twin)).filter(({ kind }) => kind === 'quickfix')
    expect(add).toMatchObject({ title: 'Add the 3 that are not taken', isPreferred: true })
    expect(more).toEqual([])
    const [edit] = (add && editsOf(add)) ?? []
    expect(
      (edit as SnippetTextEdit).snippet.value,
    ).toContain(`  seal { free-length: \${1:?}  fitted-length: 121 mm \\}

  propeller { turns: \${2:?} \\}

  phase-map { \${3:?} to \${4:?}, \${5:?} to \${6:?}, \${7:?} to \${8:?}`)
  })

  it('offer nothing where nothing is wrong', async () => {
    expect(await offers(client, 9)).toEqual([])
  })

  it('trust no diagnostic but those of the text as it stands', async () => {
    const stale = { code: 'job/unit-missing', message: 'old', range: { start: { line: 9, character: 0 } } }
    const diagnostics = [{ ...stale, range: { ...stale.range, end: { line: 9, character: 1 } } }]
    expect(await offers(client, 9, { diagnostics })).toEqual([])
  })

  it('on saving do what is sure, and no more', async () => {
    const [all, ...more] = await offers(client, 0, { only: ['source.fixAll'] })
    expect(more).toEqual([])
    expect(all?.kind).toBe('source.fixAll.shaftwright')
    const edits = ((all && editsOf(all)) ?? []) as TextEdit[]
    expect(edits).toHaveLength(1)
    expect(edits[0]?.newText).toBe('')
    expect(edits[0]?.range.end.line).toBe((edits[0]?.range.start.line ?? 0) + 1)
  })
})

describe('an editor that takes plain changes alone', () => {
  it('gets the same text without its blanks', async () => {
    const { client, stop } = await startProcess()
    // LSP 3.17, CodeActionOptions: for a client with codeActionLiteralSupport alone.
    expect(client.initialized.capabilities.codeActionProvider).toBe(true)
    client.open(uri, text)
    const add = (await offers(client, 6)).find(({ title }) => title === 'Add flange-diameter')
    expect(add?.edit?.changes?.[uri]?.[0]?.newText).toContain('flange-diameter:')
    expect(add?.edit?.changes?.[uri]?.[0]?.newText).not.toMatch(/blank|\$/)
    expect(await stop()).toBe(0)
  })
})

/** A text after everything that is sure is put right in it. */
function saved(text: string): string {
  const document = openDocument(text)
  const analysis = new Analysis()
  analysis.begin()
  const file = linkFile('a.wright', document, () => undefined)
  const today = '2026-03-10'
  const findings = new Checker(analysis, allChecks).check(file, { today })
  const edits = fixAll({ analysis, file, today, findings, blanks: false })
  return document.sections
    .map((section) => {
      const edit = edits.find(({ at }) => at.section === section)
      const { start, end } = edit?.at.span ?? { start: 0, end: 0 }
      return section.text.slice(0, start) + (edit?.newText ?? '') + section.text.slice(end)
    })
    .join('')
}

describe('what is done on saving', () => {
  const before = `battery house {
  nominal: 96 V
  window:  108..84 V
}
drive main {
  coupling {
    kind:            Rigid
    flange-diameter: 100 mm
    flange-diameter: 100 mm
    gauge-diameter:  90
    pilto:           no
  }
}
`
  const after = `battery house {
  nominal: 96 V
  window:  84..108 V
}
drive main {
  coupling {
    kind:            rigid
    flange-diameter: 100 mm
    gauge-diameter:  90
    pilto:           no
  }
}
`

  it('is what means the same to whoever reads it: order, case and what is said twice, no unit and no other word', () => {
    expect(saved(before)).toBe(after)
  })

  it('is done once', () => {
    expect(saved(after)).toBe(after)
  })
})
