// The grammar as an editor runs it. Scope names: the conventions of TextMate's manual, section 12.4, which themes colour by.
import { beforeAll, describe, expect, it } from 'vitest'
import textmate from 'vscode-textmate'
import { loadGrammar } from './grammar.ts'

let grammar: textmate.IGrammar

beforeAll(async () => {
  grammar = await loadGrammar()
})

/** The innermost scope of each word of the last line, without the language's name. */
function scopes(...lines: readonly string[]): Readonly<Record<string, string>> {
  let stack = textmate.INITIAL
  let found: Record<string, string> = {}
  for (const line of lines) {
    const { tokens, ruleStack } = grammar.tokenizeLine(line, stack)
    stack = ruleStack
    found = Object.fromEntries(
      tokens.map((token) => [
        line.slice(token.startIndex, token.endIndex).trim(),
        token.scopes.at(-1)?.replace('.shaftwright', '') ?? '',
      ]),
    )
  }
  return found
}

describe('colours', () => {
  it.each([
    ['drive starboard {', { drive: 'storage.type.block', starboard: 'entity.name.type' }],
    [
      'move after dry-1 {',
      { move: 'storage.type.block', after: 'keyword.control', 'dry-1': 'variable.other' },
    ],
    ['concession key/shear-high {', { 'key/shear-high': 'entity.name.type' }],
    ['use "parts.wright"', { use: 'keyword.control.import', 'parts.wright': 'string.quoted.double' }],
    ['## of the seal', { '## of the seal': 'comment.block.documentation' }],
    ['# note', { '# note': 'comment.line.number-sign' }],
    [
      'gap-variation: max 0.10 mm',
      {
        'gap-variation': 'support.type.property-name',
        max: 'keyword.other',
        '0.10': 'constant.numeric',
        mm: 'keyword.other.unit',
      },
    ],
    [
      'fwd-port: up 2 flats',
      { 'fwd-port': 'variable.other.property', up: 'constant.language', flats: 'keyword.other.unit' },
    ],
    ['diameter: 35 mm h9', { h9: 'constant.other.fit' }],
    ['compression: 26 mm +3/-2 mm', { '+3/-2': 'constant.numeric' }],
    ['window: 84..108 V', { '84': 'constant.numeric', '..': 'keyword.operator', V: 'keyword.other.unit' }],
    ['pitch: 1-1/4 in', { '1-1/4': 'constant.numeric', in: 'keyword.other.unit' }],
    ['taken: 2026-03-04', { '2026-03-04': 'constant.numeric.date' }],
    ['status: as-built', { 'as-built': 'constant.language' }],
    ['like: stock.shaft', { like: 'keyword.control', 'stock.shaft': 'variable.other' }],
    [
      'length: 2 m [drawing "S-07"]',
      { drawing: 'entity.other.attribute-name', 'S-07': 'string.quoted.double' },
    ],
    ['thread: M16x1.5', { 'M16x1.5': 'variable.other' }],
    ['bore: .5 in', { '.5': 'constant.numeric', in: 'keyword.other.unit' }],
    ['bore: 35 mm +- .5 mm', { '+-': 'keyword.operator', '.5': 'constant.numeric' }],
    ['vessel: “Launch”', { '“Launch”': 'string.quoted.other' }],
    ['my-length: 2 m', { 'my-length': 'variable.other.property' }],
    ['from: motor', { motor: 'variable.other' }],
    // Git's marks, at the margin (git-merge, "How conflicts are presented").
    ['<<<<<<< HEAD', { '<<<<<<< HEAD': 'invalid.illegal.conflict' }],
    ['||||||| 1a2b3c4', { '||||||| 1a2b3c4': 'invalid.illegal.conflict' }],
    ['=======', { '=======': 'invalid.illegal.conflict' }],
    ['>>>>>>> drive { shaft', { '>>>>>>> drive { shaft': 'invalid.illegal.conflict' }],
  ])('%s', (line, expected) => {
    expect(scopes(line)).toMatchObject(expected)
  })

  it('end with the line, also for a text or a bracket that is not closed', () => {
    for (const open of ['note: "half', 'length: 2 m [half', 'motor main'])
      expect(scopes(open, 'length: 2 m')).toMatchObject({ length: 'support.type.property-name' })
  })
})
