// What people have done with a text, each as a whole: at the terminal, in an editor, and from one keystroke to the next.
import 'vscode-languageserver/node' // sets up timers for the server
import type { CancellationToken } from 'vscode-languageserver/node'
import { trustedCorrection } from '../../server/src/areas/alignment/plan-trust.ts'
import { logUpTo } from '../../server/src/areas/alignment/plans/log.ts'
import { logJson } from '../../server/src/areas/alignment/plans/log-json.ts'
import { lastReading } from '../../server/src/areas/alignment/plans/moves.ts'
import { planJson } from '../../server/src/areas/alignment/plans/plan-json.ts'
import { planText } from '../../server/src/areas/alignment/plans/plan-text.ts'
import { allChecks } from '../../server/src/areas/index.ts'
import type { Finding } from '../../server/src/checks/check.ts'
import { Checker } from '../../server/src/checks/run.ts'
import { toDiagnostics } from '../../server/src/editor/diagnostics/diagnostics.ts'
import { features } from '../../server/src/editor/features.ts'
import { bareSettings } from '../../server/src/editor/settings.ts'
import { type OpenFile, Workspace } from '../../server/src/editor/workspace/workspace.ts'
import { Analysis } from '../../server/src/job/analysis.ts'
import { openDocument, type Position } from '../../server/src/job/document.ts'
import { linkFile } from '../../server/src/job/files.ts'
import { lookupFrom } from '../../server/src/store/store.ts'
import { findingsOf } from '../checks/marks.ts'
import type { Action } from './input.ts'

/** What is counted, once all before it is done. */
type Work = () => void | Promise<void>

const today = '2026-03-10'

function rethrow(check: string, error: unknown): never {
  throw new Error(`${check} failed`, { cause: error })
}

/** The plan of every drive, as text and as JSON, without anything being checked: that is counted by itself. */
function plan(text: string): void {
  const analysis = new Analysis()
  analysis.begin()
  const file = linkFile('a.wright', openDocument(text), () => undefined)
  for (const drive of analysis.blocks(file).filter(({ kind }) => kind === 'drive')) {
    const reading = lastReading(drive)
    if (!reading) continue
    const lookup = lookupFrom(reading, { analysis, file })
    const found = trustedCorrection(lookup.block, lookup, { file, findings: [] })
    if (!found.ok) continue
    const log = logUpTo(lookup.block, lookup)
    planText(found.value, log, lookup.system)
    JSON.stringify([planJson(found.value, lookup.system), logJson(log)])
  }
}

const uri = 'file:///jobs/a.wright'

const neverCancelled: CancellationToken = {
  isCancellationRequested: false,
  onCancellationRequested: () => ({ dispose: () => {} }),
}

/** An editor with a text open. */
class Editor {
  readonly #workspace = new Workspace(() => undefined)
  readonly #checker = new Checker(this.#workspace.analysis, allChecks)
  #version = 1

  constructor(text: string) {
    this.#workspace.setFolders({ added: ['file:///jobs'] })
    this.#workspace.open(uri, this.#version, text)
  }

  readonly #findingsOf = (open: OpenFile): readonly Finding[] =>
    this.#checker.check(this.#workspace.link(open), { today, onFault: rethrow })

  get open(): OpenFile {
    const open = this.#workspace.get(uri)
    if (!open) throw new Error(`${uri} is not open`)
    return open
  }

  diagnose(): number {
    const { open } = this
    const told = { workspace: this.#workspace, open, docs: 'https://docs.invalid/' }
    return toDiagnostics(this.#findingsOf(open), told).length
  }

  type(position: Position, text: string): void {
    const range = { start: position, end: position }
    const refused = this.#workspace.change(uri, ++this.#version, [{ range, text }])
    if (refused) throw new Error(refused)
  }

  async ask(method: string, params: object): Promise<unknown> {
    const feature = features.find((one) => one.method === method)
    if (!feature) throw new Error(`nobody answers ${method}`)
    const asked = {
      params: { textDocument: { uri }, ...params },
      workspace: this.#workspace,
      settings: bareSettings,
      client: {},
      docs: 'https://docs.invalid/',
      today,
      token: neverCancelled,
      findingsOf: this.#findingsOf,
      follow: () => {},
      open: this.open,
    }
    return await feature.answer(asked as never)
  }
}

/** Of the whole text: what an editor asks when it shows it. */
const ofText = [
  'textDocument/codeLens',
  'textDocument/documentSymbol',
  'textDocument/foldingRange',
  'textDocument/documentLink',
  'textDocument/semanticTokens/full',
  'textDocument/formatting',
]

/** Of a place in it: what an editor asks where the cursor or the pointer is. */
const ofPlace = [
  'textDocument/hover',
  'textDocument/completion',
  'textDocument/definition',
  'textDocument/references',
  'textDocument/documentHighlight',
  'textDocument/signatureHelp',
  'textDocument/selectionRange',
  'textDocument/prepareRename',
  'textDocument/prepareTypeHierarchy',
]

/** The last word of a line of each form near the middle of the text, so that at every size the same is asked, and the end of one line. */
function placesIn(text: string): readonly Position[] {
  const lines = text.split('\n')
  const middle = Math.floor(lines.length / 2)
  const ofForm = new Map<string, Position>()
  for (const [i, words] of lines.slice(middle, middle + 16).entries()) {
    const character = words.search(/\w+\W*$/)
    const form = words.slice(0, 200).replace(/\d+/g, '0')
    if (character >= 0 && !ofForm.has(form)) ofForm.set(form, { line: middle + i, character })
  }
  const places = [...ofForm].toSorted(([a], [b]) => (a < b ? -1 : 1)).slice(0, 12)
  return places.flatMap(([, at], i) =>
    i > 0 ? [at] : [at, { ...at, character: lines[at.line]?.length ?? 0 }],
  )
}

const options = { tabSize: 2, insertSpaces: true }

/** All that an editor asks when it shows a text, when it is pointed at and when something is to be completed in it. */
function edit(text: string): Work {
  const lines = text.split('\n').length
  const whole = { start: { line: 0, character: 0 }, end: { line: lines, character: 0 } }
  return async () => {
    const editor = new Editor(text)
    editor.diagnose()
    for (const method of ofText) await editor.ask(method, { options })
    await editor.ask('textDocument/inlayHint', { range: whole })
    await editor.ask('workspace/symbol', { query: 'f' })
    for (const position of placesIn(text))
      for (const method of ofPlace)
        await editor.ask(method, { position, positions: [position], context: { includeDeclaration: true } })
  }
}

/** All that can be offered for a text that is selected from end to end. */
function offer(text: string): Work {
  const range = { start: { line: 0, character: 0 }, end: { line: text.split('\n').length, character: 0 } }
  const editor = new Editor(text)
  editor.diagnose()
  return async () =>
    void (await editor.ask('textDocument/codeAction', { range, context: { diagnostics: [] } }))
}

/** Characters typed one after the other in a text that is open, and what an editor asks after each: what has been worked out is kept. */
async function type(text: string): Promise<Work> {
  const editor = new Editor(text)
  const places = placesIn(text)
  const look = async ({ line }: Position) => {
    editor.diagnose()
    const range = { start: { line, character: 0 }, end: { line: line + 50, character: 0 } }
    await editor.ask('textDocument/inlayHint', { range })
    for (const method of ['textDocument/codeLens', 'textDocument/semanticTokens/full'])
      await editor.ask(method, {})
  }
  for (const place of places.slice(0, 1)) await look(place)
  return async () => {
    for (const [i, typed] of ['1', ' '].entries()) {
      const place = places[i]
      if (!place) continue
      editor.type(place, typed)
      await look(place)
    }
  }
}

export const actions: Readonly<Record<Action, (text: string) => Work | Promise<Work>>> = {
  check: (text) => () => void findingsOf(text, allChecks, { today }),
  plan: (text) => () => plan(text),
  edit,
  type,
  offer,
}
