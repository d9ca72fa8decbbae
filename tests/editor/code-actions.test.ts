import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import {
  type CodeAction,
  CodeActionRequest,
  type Range,
  type SnippetTextEdit,
  type TextDocumentEdit,
  type TextEdit,
} from 'vscode-languageserver'
import { allChecks } from '../../server/src/checks/index.ts'
import { Checker } from '../../server/src/checks/run.ts'
import { fixAll } from '../../server/src/editor/code-actions.ts'
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
`

/** Offers at a line (LSP 3.18, textDocument/codeAction). */
async function offers(client: Client, line: number, context: object = {}): Promise<readonly CodeAction[]> {
  const range: Range = { start: { line, character: 0 }, end: { line, character: 80 } }
  const params = { textDocument: { uri }, range, context: { diagnostics: [], ...context } }
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

  it('leave a blank where only the person knows the figure', async () => {
    const add = (await offers(client, 6)).find(({ title }) => title === 'Add flange-diameter')
    const [edit] = (add && editsOf(add)) ?? []
    expect((edit as SnippetTextEdit).snippet.value).toContain('flange-diameter: $1')
    // From the margin on, so that the editor does not indent what is indented already.
    expect((edit as SnippetTextEdit).range.start.character).toBe(0)
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
