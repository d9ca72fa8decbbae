// Types and modifiers: LSP 3.17, SemanticTokenTypes and SemanticTokenModifiers; the encoding: there, "Integer Encoding for Tokens".
import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import fc from 'fast-check'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { SemanticTokenModifiers, SemanticTokenTypes } from 'vscode-languageserver'
import { tokenModifiers, tokenTypes } from '../../server/src/editor/tokens/semantic-legend.ts'
import { semanticTokens } from '../../server/src/editor/tokens/semantic-tokens.ts'
import {
  encodedTokens,
  encodedTokensIn,
  tokenEdits,
} from '../../server/src/editor/tokens/semantic-tokens-encoded.ts'
import { edit, openDocument } from '../../server/src/job/document.ts'
import { jobs, texts } from '../syntax/texts.ts'
import { startProcess } from './client.ts'

const demo = readFileSync(
  resolve(import.meta.dirname, '../../docs/examples/survey-launch-as-built.wright'),
  'utf8',
)

/** Decoded as the specification says: each position from that of the token before. */
function decoded(data: readonly number[], text: string) {
  const lines = text.split(/\r\n|\n|\r/)
  let [line, character] = [0, 0]
  return Array.from({ length: data.length / 5 }, (_, i) => {
    const [down = 0, right = 0, length = 0, type = 0, bits = 0] = data.slice(i * 5, i * 5 + 5)
    line += down
    character = down > 0 ? right : character + right
    const written = lines[line]?.slice(character, character + length) ?? ''
    const modifiers = tokenModifiers.filter((_of, bit) => bits & (1 << bit))
    return { line, character, length, written, said: [written, tokenTypes[type], ...modifiers].join(' ') }
  })
}
const said = (text: string) => decoded(encodedTokens(openDocument(text)), text).map((token) => token.said)

describe('semantic tokens', () => {
  it('have types and modifiers of the standard alone', () => {
    for (const type of tokenTypes) expect(Object.values(SemanticTokenTypes)).toContain(type)
    for (const modifier of tokenModifiers) expect(Object.values(SemanticTokenModifiers)).toContain(modifier)
  })

  it.each([
    ['use "a.wright"', ['use keyword', '"a.wright" string']],
    [
      '## of the drive\ndrive main { }',
      ['## of the drive comment documentation', 'drive class', 'main variable declaration'],
    ],
    ['shaft { diameter: ? mm }', ['shaft class', 'diameter property', '? keyword', 'mm type']],
    ['job "x" { status: draft }', ['job class', '"x" string', 'status property', 'draft enumMember']],
    [
      'seal { compression: 26 mm +3/-2 mm [maker] # note\n}',
      [
        'seal class',
        'compression property',
        ...['26 number', 'mm type', '+3/-2 number', 'mm type', 'maker decorator', '# note comment'],
      ],
    ],
    [
      'shaft { length: 2 * (coupling.offset - .5 m) }',
      [
        'shaft class',
        'length property',
        ...['2 number', '* operator', 'coupling variable', 'offset property', '- operator'],
        ...['.5 number', 'm type'],
      ],
    ],
    ['seal { free-length: (shaft-size) }', ['seal class', 'free-length property', 'shaft-size property']],
    [
      'coupling { offset: max 0.1 mm }',
      ['coupling class', 'offset property', 'max keyword', '0.1 number', 'mm type'],
    ],
    [
      'shaft { diameter: 35 mm h9 }',
      ['shaft class', 'diameter property', '35 number', 'mm type', 'h9 enumMember'],
    ],
    ['gear { like: stock.gear }', ['gear class', 'like keyword', 'stock variable', 'gear variable']],
    [
      'move after dry-1 { aft-port: up 2 flats }',
      [
        ...['move class', 'after keyword', 'dry-1 variable', 'aft-port variable'],
        ...['up enumMember', '2 number', 'flats type'],
      ],
    ],
    [
      'reading r { gaps: top 1.92 mm, 90 deg -0.02 mm }',
      [
        ...['reading class', 'r variable declaration', 'gaps property', 'top enumMember'],
        ...['1.92 number', 'mm type', '90 number', 'deg type', '- number', '0.02 number', 'mm type'],
      ],
    ],
    ['phase-map { A to U }', ['phase-map class', 'A variable', 'to keyword', 'U variable']],
    ['shaft { material: duplex-1-4462 }', ['shaft class', 'material property', 'duplex-1-4462 string']],
    ['concession seal/x { on: a }', ['concession class', 'seal/x variable', 'on property', 'a string']],
    ['wheel { size: 2 furlong }', ['size property', '2 number']],
  ])('%s', (text, expected) => {
    expect(said(text)).toEqual(expected)
  })

  it('are in order, inside their lines, and never one over another, whatever the text', () => {
    fc.assert(
      fc.property(texts, (text) => {
        const tokens = decoded(encodedTokens(openDocument(text)), text)
        tokens.forEach((token, i) => {
          expect(token.length).toBeGreaterThan(0)
          expect(token.written).toHaveLength(token.length)
          const before = tokens[i - 1]
          if (before?.line === token.line)
            expect(token.character).toBeGreaterThanOrEqual(before.character + before.length)
        })
      }),
      { numRuns: 500 },
    )
  })

  it('of some lines are those of all that stand there', () => {
    fc.assert(
      fc.property(jobs, fc.nat(30), fc.nat(10), (text, from, more) => {
        const document = openDocument(text)
        const some = decoded(encodedTokensIn(document, from, from + more), text)
        const all = decoded(encodedTokens(document), text)
        expect(some).toEqual(all.filter(({ line }) => line >= from && line <= from + more))
      }),
    )
  })

  it('after an edit are those before with the difference told', () => {
    fc.assert(
      fc.property(
        jobs,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.nat(5),
        texts,
        (text, at, cut, put) => {
          const from = Math.floor(at * text.length)
          const before = openDocument(text)
          const after = edit(before, from, Math.min(text.length, from + cut), put)
          const data = [...encodedTokens(before)]
          for (const { start, deleteCount, data: put } of tokenEdits(data, encodedTokens(after)))
            data.splice(start, deleteCount, ...put)
          expect(data).toEqual(encodedTokens(after))
        },
      ),
      { numRuns: 300 },
    )
  })

  it('are kept for what an edit does not touch', () => {
    const before = openDocument(demo)
    const after = edit(before, demo.length, demo.length, '\nbattery spare { }\n')
    const [first] = before.sections
    expect(first && semanticTokens(first)).toBe(after.sections[0] && semanticTokens(after.sections[0]))
  })
})

describe('the server', () => {
  let server: Awaited<ReturnType<typeof startProcess>>
  beforeAll(async () => {
    server = await startProcess()
  })
  afterAll(() => server.stop())

  it('tells what it calls them, and answers with all, some, and the difference', async () => {
    const { client } = server
    const uri = 'file:///jobs/boat.wright'
    const ask = <R>(method: string, more: object = {}) =>
      client.connection.sendRequest<R>(`textDocument/semanticTokens/${method}`, {
        textDocument: { uri },
        ...more,
      })
    const provider = client.initialized.capabilities.semanticTokensProvider
    expect(provider).toMatchObject({
      legend: { tokenTypes: [...tokenTypes], tokenModifiers: [...tokenModifiers] },
      full: { delta: true },
      range: true,
    })
    const text = 'gear { ratio: 2 }\nshaft { length: 1 m }\n'
    client.open(uri, text)
    const full = await ask<{ resultId: string; data: number[] }>('full')
    expect(full.data).toEqual(encodedTokens(openDocument(text)))
    const range = { start: { line: 1, character: 0 }, end: { line: 1, character: 3 } }
    expect(await ask('range', { range })).toEqual({ data: encodedTokensIn(openDocument(text), 1, 1) })
    expect(await ask('full/delta', { previousResultId: full.resultId })).toMatchObject({ edits: [] })
    // The answer is no longer the last.
    expect(await ask('full/delta', { previousResultId: full.resultId })).toMatchObject({ data: full.data })
  })
})
