// Layout of some lines, and of a line as it is typed: never other than that of the whole text.
import fc from 'fast-check'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { TextEdit } from 'vscode-languageserver'
import { features } from '../../server/src/editor/features.ts'
import { type Document, edit, offsetAt, openDocument, textOf } from '../../server/src/job/document.ts'
import { formatText } from '../../server/src/syntax/format.ts'
import { jobs, texts } from '../syntax/texts.ts'
import { startProcess } from './client.ts'
import { openFixture } from './fixture.ts'

function ask(method: string, document: Document, params: object): readonly TextEdit[] {
  const feature = features.find((of) => of.method === `textDocument/${method}`)
  return feature?.answer({ open: { document }, params } as never) as readonly TextEdit[]
}

/** Edits never overlap: from the last to the first, each stands where it says. */
const applied = (document: Document, edits: readonly TextEdit[]): string =>
  textOf(
    edits.reduceRight(
      (of, { range, newText }) =>
        edit(of, offsetAt(document, range.start), offsetAt(document, range.end), newText),
      document,
    ),
  )

const laidOut = (text: string, from: number, to: number): string => {
  const document = openDocument(text)
  const range = { start: { line: from, character: 0 }, end: { line: to, character: 0 } }
  return applied(document, ask('rangeFormatting', document, { range }))
}

const typed = (marked: string, ch: string): string => {
  const { open, position } = openFixture(marked)
  return applied(open.document, ask('onTypeFormatting', open.document, { position, ch }))
}

const black = (text: string): string => text.replace(/[\s\uFEFF]/g, '')
const loose = 'drive d {\nshaft {\n      diameter:35 mm\nlength:  1 m [maker]\n}\n}\n'

describe('a selection laid out', () => {
  it('is the lines it touches, as the whole text would have them', () => {
    expect(laidOut(loose, 2, 3)).toBe('drive d {\nshaft {\n    diameter: 35 mm\nlength:  1 m [maker]\n}\n}\n')
    expect(laidOut(loose, 2, 4)).toBe(
      'drive d {\nshaft {\n    diameter: 35 mm\n    length:   1 m   [maker]\n}\n}\n',
    )
    expect(laidOut(loose, 3, 3)).toBe(
      'drive d {\nshaft {\n      diameter:35 mm\n    length:   1 m   [maker]\n}\n}\n',
    )
  })

  it('reaches over blocks, and keeps line ends and blank lines', () => {
    const text = 'gear {\r\nratio:2\r\n}\r\n\r\n\r\nseal {\r\nfree-length: .5 in\r\n}\r\n'
    expect(laidOut(text, 0, 9)).toBe(
      'gear {\r\n  ratio: 2\r\n}\r\n\r\n\r\nseal {\r\n  free-length: .5 in\r\n}\r\n',
    )
  })

  it('leaves a line whose new layout would join it to the section before', () => {
    for (const marked of ['job\n\uFEFF##', 'job\n\u00A0#']) {
      expect(laidOut(marked, 1, 1)).toBe(marked)
      expect(formatText(marked)).toBe(marked)
    }
  })

  it('makes no one line end of two', () => {
    expect(laidOut('\r\t\njob', 0, 2)).toBe('\r\t\njob')
  })

  it('changes white space alone, on lines it touches alone, and towards the whole layout', () => {
    fc.assert(
      fc.property(fc.oneof(jobs, texts), fc.nat(20), fc.nat(8), (text, line, more) => {
        const from = Math.min(line, text.split(/\r\n|\n|\r/).length - 1)
        const after = laidOut(text, from, from + more)
        expect(black(after)).toBe(black(text))
        const lines = (of: string) => of.split(/\r\n|\n|\r/)
        expect(lines(after).slice(0, from)).toEqual(lines(text).slice(0, from))
        expect(lines(after).slice(from + more + 1)).toEqual(lines(text).slice(from + more + 1))
        expect(
          openDocument(after)
            .sections.map((section) => black(section.text))
            .filter(Boolean),
        ).toEqual(
          openDocument(text)
            .sections.map((section) => black(section.text))
            .filter(Boolean),
        )
        if (formatText(text) !== text) expect(formatText(after)).toBe(formatText(text))
      }),
      { numRuns: 1000 },
    )
  })
})

describe('while it is typed', () => {
  it.each([
    ['a new line in a block', 'drive d {\n$0', 'drive d {\n  '],
    [
      'a new line in a block inside',
      'drive d {\n  shaft {\n$0\n  }\n}\n',
      'drive d {\n  shaft {\n    \n  }\n}\n',
    ],
    ['a new line behind a block', 'gear { }\n  $0', 'gear { }\n'],
    [
      'a line broken in two',
      'seal { free-length: 1 m\n$0shaft-size: 35 mm }',
      'seal { free-length: 1 m\n  shaft-size: 35 mm }',
    ],
    [
      'a new line in a block still open, with others below',
      'drive d {\n  gear { }\n$0\nbattery b { }\n',
      'drive d {\n  gear { }\n  \nbattery b { }\n',
    ],
    ['a line that is right already', 'drive d {\n  $0', 'drive d {\n  '],
  ])('%s', (_, marked, expected) => {
    expect(typed(marked, '\n')).toBe(expected)
  })

  it('a closing brace goes below what it closes, where it stands alone', () => {
    expect(typed('drive d {\n  gear {\n    }$0\n', '}')).toBe('drive d {\n  gear {\n  }\n')
    for (const kept of ['drive d {\n     gear { }$0\n', '# {\n   note: "}$0"', 'drive d {\n}$0']) {
      expect(typed(kept, '}')).toBe(kept.replace('$0', ''))
    }
  })

  it('only the white space the line begins with changes', () => {
    fc.assert(
      fc.property(fc.oneof(jobs, texts), fc.nat(20), fc.nat(8), (text, line, character) => {
        const document = openDocument(text)
        for (const ch of ['\n', '}'])
          for (const { range, newText } of ask('onTypeFormatting', document, {
            position: { line, character },
            ch,
          })) {
            expect(newText).toMatch(/^ *$/)
            expect(text.slice(offsetAt(document, range.start), offsetAt(document, range.end))).toMatch(
              /^[ \t]*$/,
            )
          }
      }),
      { numRuns: 500 },
    )
  })
})

describe('the server', () => {
  let server: Awaited<ReturnType<typeof startProcess>>
  beforeAll(async () => {
    server = await startProcess()
  })
  afterAll(() => server.stop())

  it('lays out a selection, and a line as it is typed', async () => {
    const { client } = server
    expect(client.initialized.capabilities).toMatchObject({
      documentRangeFormattingProvider: true,
      documentOnTypeFormattingProvider: { firstTriggerCharacter: '}', moreTriggerCharacter: ['\n'] },
    })
    const uri = 'file:///jobs/boat.wright'
    client.open(uri, loose)
    const at = (line: number) => ({ line, character: 0 })
    const asked = { textDocument: { uri }, options: { tabSize: 8, insertSpaces: false } }
    expect(
      await client.connection.sendRequest('textDocument/rangeFormatting', {
        ...asked,
        range: { start: at(1), end: at(1) },
      }),
    ).toEqual([{ range: { start: at(1), end: { line: 1, character: 7 } }, newText: '  shaft {' }])
    expect(
      await client.connection.sendRequest('textDocument/onTypeFormatting', {
        ...asked,
        position: { line: 4, character: 1 },
        ch: '}',
      }),
    ).toEqual([{ range: { start: at(4), end: at(4) }, newText: '  ' }])
  })
})
