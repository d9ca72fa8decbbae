// An editor that takes the first fitting offer on Enter, as many do, must not change a line that needs nothing more.
import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { CompletionItem, CompletionList, TextEdit } from 'vscode-languageserver/node'
import { Analysis } from '../../server/src/job/analysis.ts'
import { openDocument } from '../../server/src/job/document.ts'
import { linkFile } from '../../server/src/job/files.ts'
import { units } from '../../server/src/quantity/units.ts'
import { blockKinds } from '../../server/src/vocabulary/index.ts'
import { startProcess } from './client.ts'

const uri = 'file:///jobs/boat.wright'
const demos = ['survey-launch-as-built', 'inch-day-boat', 'twin-screw-ferry'] as const
const examples = resolve(import.meta.dirname, '../../docs/examples')
const demo = (name: string): string => readFileSync(resolve(examples, `${name}.wright`), 'utf8')

interface Cut {
  readonly text: string
  readonly line: number
  readonly character: number
}

/** A text with one of its lines cut off behind a token. */
function* cuts(text: string): Generator<Cut> {
  const lines = text.split('\n')
  for (const [line, written] of lines.entries()) {
    const code = written.replace(/\s*#.*$/, '')
    for (const { index, 0: token } of code.matchAll(/"[^"]*"|[^\s",:[\]{}]+|[\]}]/g)) {
      const character = index + token.length
      yield { text: lines.with(line, written.slice(0, character)).join('\n'), line, character }
    }
  }
}

/** Whether the language itself finds nothing wrong with the line that was cut. */
function isWhole({ text, line, character }: Cut): boolean {
  const document = openDocument(text)
  const file = linkFile('boat.wright', document, () => undefined)
  const analysis = new Analysis()
  const starts = text.split('\n').slice(0, line).join('\n').length + (line > 0 ? 1 : 0)
  let start = 0
  for (const section of document.sections) {
    const [from, to] = [starts - start, starts + character - start]
    start += section.text.length
    if (to < 0 || from > section.text.length) continue
    const spans = [
      ...section.parsed.problems.map(({ span }) => span),
      ...analysis.bound(file, section).problems.map(({ at }) => at.span),
    ]
    if (spans.some((span) => span.start <= to && span.end >= from)) return false
  }
  return true
}

/** Whether a client takes an offer for the word before the cursor: all its letters, in their order. */
const fits = (word: string, { filterText, label }: CompletionItem): boolean => {
  const name = (filterText ?? label).toLowerCase()
  let at = -1
  return [...word.toLowerCase()].every((letter) => {
    at = name.indexOf(letter, at + 1)
    return at >= 0
  })
}

const triggers = [':', ' ', ',', '.', '"', '[', '/']
let server: Awaited<ReturnType<typeof startProcess>>
let version = 1

beforeAll(async () => {
  server = await startProcess({
    capabilities: { textDocument: { completion: { completionItem: { snippetSupport: true } } } },
  })
  server.client.open(uri, '', version)
}, 60_000)
afterAll(() => server.stop())

/** What is offered, unasked, to somebody who has just typed up to the cut. */
async function offeredAt({ text, line, character }: Cut): Promise<CompletionList | null> {
  const { connection } = server.client
  version += 1
  await connection.sendNotification('textDocument/didChange', {
    textDocument: { uri, version },
    contentChanges: [{ text }],
  })
  const typed = text.split('\n')[line]?.[character - 1] ?? ''
  return connection.sendRequest('textDocument/completion', {
    textDocument: { uri },
    position: { line, character },
    context: triggers.includes(typed) ? { triggerKind: 2, triggerCharacter: typed } : { triggerKind: 1 },
  })
}

/** Each spelling of each unit, behind a number in a fact that takes it. */
const unitSpellings = units.flatMap((unit) => {
  for (const { kind, facts } of blockKinds)
    for (const [fact, { shape }] of Object.entries(facts))
      if (shape.quantity === unit.kind && !shape.forms)
        return [unit.name, ...unit.aliases].map((spelling) => [kind, fact, spelling] as const)
  return []
})

const lineOf = ({ text, line }: Cut): string => text.split('\n')[line] ?? ''

/** What Enter would write instead of the last word, from any list that was opened earlier in it. Of several that fit, a client puts
 * the one that is the word itself first. */
async function takenEarlier(cut: Cut): Promise<readonly string[]> {
  const line = lineOf(cut)
  const lines = cut.text.split('\n')
  const start = line.slice(0, cut.character).search(/"[^"]*"$|[^\s",:[\]{}]+$|[\]}]$/)
  const taken = new Set<string>()
  for (let character = start; character < cut.character; character++) {
    // Clients ask at letters, digits, and the characters they are told.
    if (!triggers.includes(line[character - 1] ?? '') && !/[\p{L}\p{N}]/u.test(line[character - 1] ?? ''))
      continue
    const text = lines.with(cut.line, line.slice(0, character)).join('\n')
    const offered = await offeredAt({ text, line: cut.line, character })
    const fitting = (offered?.items ?? []).flatMap((item) => {
      const { range, newText } = item.textEdit as TextEdit
      const replaced = line.slice(range.start.character, cut.character)
      return fits(replaced, item) ? [{ item, newText, replaced }] : []
    })
    if (fitting.some(({ newText, replaced }) => newText === replaced)) continue
    for (const { newText } of fitting) taken.add(`${line.slice(start, character)}|: ${newText}`)
  }
  return [...taken]
}

describe('a line that is whole', () => {
  it.each(demos)(
    'is not changed by what a client takes on Enter: %s',
    async (name) => {
      let asked = 0
      for (const cut of cuts(demo(name))) {
        const line = cut.text.split('\n')[cut.line] ?? ''
        // A block's kind or a fact's name alone is still to go on.
        if (/^\s*[\p{L}-]+$/u.test(line) || !isWhole(cut)) continue
        asked += 1
        const { items } = (await offeredAt(cut)) ?? { items: [] }
        const changing = items.flatMap((item) => {
          const { range, newText } = item.textEdit as TextEdit
          const before = line.slice(range.start.character, cut.character)
          const replaced = line.slice(range.start.character, range.end.character)
          return fits(before, item) && newText !== replaced ? [newText] : []
        })
        expect(changing, line).toEqual([])
      }
      expect(asked).toBeGreaterThan(100)
    },
    120_000,
  )

  // The list that was opened in the middle of a word, or before it, stays in view while the word grows.
  it.each(demos)(
    'is not changed by what was offered earlier in its last word: %s',
    async (name) => {
      let asked = 0
      for (const cut of cuts(demo(name))) {
        if (!isWhole(cut)) continue
        asked += 1
        expect(await takenEarlier(cut), lineOf(cut)).toEqual([])
      }
      expect(asked).toBeGreaterThan(100)
    },
    240_000,
  )

  it.each([
    'bed { thread:M16',
    'bed { thread: M16x1.5',
    'bed { foot aft { shims: 0.05 mm,0.1mm',
    'cable feed { conductor: 16mm2',
    'cable feed { conductor: 16 mm²',
    'cable feed { conductor: 1/0AWG',
    'cable feed { insulation: 75 °C',
    'cable feed { insulation: 75degC',
    'cable feed { length: 500mm',
    'cable feed { length: 9ft',
    'motor { terminals: U,V,W',
    'motor { speed: 1500rpm',
    'motor { speed: 1500 rev/min',
    'coupling { kind:flexible',
    'coupling { torque: 12Nm',
    'coupling { torque: 12 N·m',
    'gear { ratio: 2',
    'propeller { turns:right-hand',
  ])(
    'is not changed by what was offered earlier in its last word, written as few do: %s',
    async (written) => {
      const text = `drive d {\n  ${written}`
      expect(await takenEarlier({ text, line: 1, character: written.length + 2 })).toEqual([])
    },
  )

  it.each(unitSpellings)('is not changed by other units: %s { %s: 7 %s', async (kind, fact, spelling) => {
    const written = `  ${fact}: 7 ${spelling}`
    const text = `${kind} x {\n${written}`
    expect(await takenEarlier({ text, line: 1, character: written.length })).toEqual([])
  })

  it('has offers again as soon as more is typed', async () => {
    const at = (line: string): Cut => ({
      text: `drive d { coupling {\n${line}\n} }`,
      line: 1,
      character: line.length,
    })
    const labels = async (line: string) => (await offeredAt(at(line)))?.items.map(({ label }) => label)
    expect(await labels('kind: flex')).toContain('flexible')
    expect(await labels('kind: flexible')).toBeUndefined()
    // An incomplete list would be taken from while the server is asked again.
    expect((await offeredAt(at('kind: flex')))?.isIncomplete).toBe(false)
  })

  it('is not decided before Enter: nothing is chosen, no character takes an offer', async () => {
    const text = 'drive d {\n  coupling {\n    k\n  }\n}'
    const { items } = (await offeredAt({ text, line: 2, character: 5 })) ?? { items: [] }
    expect(items.length).toBeGreaterThan(5)
    for (const item of items) {
      expect(item.preselect).toBeUndefined()
      expect(item.commitCharacters).toBeUndefined()
    }
  })
})
