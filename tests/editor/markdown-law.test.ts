// A folder that nobody trusts is looked at as any other: whatever its jobs say, what an editor renders has no element but those we wrote, and
// loads nothing. Read with marked, the parser of VS Code.
import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import fc from 'fast-check'
import { lexer, type Token, walkTokens } from 'marked'
import { describe, expect, it } from 'vitest'
import {
  code,
  example,
  list,
  type Markdown,
  md,
  paragraphs,
  plain,
  prose,
  table,
} from '../../server/src/areas/common/markdown.ts'
import { hover } from '../../server/src/editor/hover/hover.ts'
import { Workspace } from '../../server/src/editor/workspace/workspace.ts'
import { startOf } from '../../server/src/job/document.ts'

const docs = 'https://docs.example/checks/'

const hostile = fc
  .array(
    fc.oneof(
      fc.constantFrom(
        ...['![i](https://evil.example/p.png)', '![][r]', '[r]: https://evil.example', '[a](command:b)'],
        ...['<img src=https://evil.example/p.png>', '<!-- ', '<b>', '&lt;', '&#33;'],
        ...['https://evil.example', 'www.evil.example', 'ftp://evil.example', 'a@evil.example', '<a:b>'],
        ...['`', '``', '```', '~~~', '|', '\\', '\\|', '\\\\|', '*', '**', '_', '~~', '#', '$(eye)'],
        ...['\u001B[31m', '\u009B', '\u202E', '\u2066', '\u200F'],
        ...['- ', '+ ', '1. ', '1) ', '---', '===', '> ', '    ', ' ', '\t', ':--', '!', '[', ']', '(', ')'],
      ),
      fc.string({ unit: 'grapheme', maxLength: 4 }),
    ),
    { minLength: 1, maxLength: 4 },
  )
  .map((pieces) => pieces.join(''))
  .filter((text) => /\S/.test(text))

function tokensOf(markdown: string): readonly Token[] {
  const found: Token[] = []
  void walkTokens(lexer(markdown), (token) => {
    found.push(token)
  })
  return found
}

/** Kinds of elements in the order they open, without those that only hold letters. */
const elements = (markdown: string): readonly string[] =>
  tokensOf(markdown)
    .map(({ type }) => type)
    .filter((type) => !['text', 'escape', 'space'].includes(type))

/** What is loaded, or leads anywhere but to a page of ours. */
const foreign = (markdown: string): readonly string[] =>
  tokensOf(markdown)
    .filter((token) =>
      token.type === 'link'
        ? !token.href.startsWith('https://docs.example/')
        : ['html', 'image', 'def'].includes(token.type),
    )
    .map(({ raw }) => raw)

/** What turns the order of the signs behind it (Unicode Standard Annex 9, section 2), or steers a terminal (ECMA-48). */
const turning = /(?!\n)\p{Cc}|[\u061C\u200E\u200F\u202A-\u202E\u2066-\u2069]/u

const harmless = (text: string): string => text.replaceAll(/\S/g, 'x')

const ways: Readonly<Record<string, (text: string) => Markdown>> = {
  'as it is': plain,
  'behind words of ours': (text) => md`A ${plain(text)}`,
  'in a sentence': (text) => prose(`The thread ${text} is none that \`bed.thread\` knows.`),
  'as code': code,
  'in bold': (text) => md`**${plain(text)}**`,
  'in a list': (text) => list([plain(text), code(text), prose(text)]),
  'in a table': (text) => table(['a', 'b', 'c'], [[plain(text), code(text), prose(text)]]),
  'in an example': (text) => paragraphs(md`before`, example(`job "${text}"`), md`behind`),
}

describe('a text of the user stays one', () => {
  it.each(Object.keys(ways))('%s', (way) => {
    const made = ways[way] ?? plain
    const law = fc.property(hostile, (text) => {
      // What stands in ticks is code in a sentence, and may be.
      const shown =
        way === 'in a sentence' || way === 'in a list' || way === 'in a table'
          ? text.replaceAll('`', "'")
          : text
      expect(elements(made(shown))).toEqual(elements(made(harmless(shown))))
    })
    fc.assert(law, { numRuns: 2000 })
  })

  it.each(Object.keys(ways))('%s, loads nothing and turns nothing round', (way) => {
    const made = ways[way] ?? plain
    fc.assert(
      fc.property(hostile, (text) => {
        expect(foreign(made(text))).toEqual([])
        expect(made(text)).not.toMatch(turning)
      }),
      { numRuns: 2000 },
    )
  })
})

const examples = resolve(import.meta.dirname, '../../docs/examples')
const demo = readFileSync(`${examples}/survey-launch-as-found.wright`, 'utf8')

/** The demo with the text at every place that may hold one, and at some that may not. */
const holding = (text: string): string => {
  const quoted = `"${text.replaceAll(/[\\"]/g, '\\$&')}"`
  return demo
    .replaceAll(/"[^"\n]*"/g, () => quoted)
    .replace(/thread: +M16/, () => `thread: ${quoted}`)
    .replace(/material: +\S+/, () => `material: ${quoted}`)
    .replaceAll(
      /^ *(?:motor|reading|coupling|seal|cable) /gm,
      (head) => `## ${text.replaceAll(/\s/g, ' ')}\n${head}`,
    )
}

describe('what is said over a job', () => {
  it('loads nothing and leads nowhere, whatever its texts are', { timeout: 120_000 }, () => {
    const law = fc.property(hostile, fc.nat({ max: 40 }), (text, from) => {
      const job = holding(text)
      const workspace = new Workspace(() => undefined)
      workspace.open('file:///jobs/a.wright', 1, job)
      const open = workspace.get('file:///jobs/a.wright')
      if (!open) throw new Error('the job is not open')
      const view = { analysis: workspace.analysis, file: workspace.link(open), docs }
      let said = 0
      for (const section of open.document.sections)
        for (let offset = from; offset < section.text.length; offset += 41) {
          const markdown = hover(view, section, offset)?.markdown
          if (markdown === undefined) continue
          said += 1
          expect(markdown).not.toMatch(turning)
          expect(foreign(markdown), `at ${startOf(open.document, section)} + ${offset}`).toEqual([])
        }
      expect(said).toBeGreaterThan(5)
    })
    fc.assert(law, { numRuns: 60 })
  })
})
