// The editor's grammar colours what the lexer reads: each token has one colour, and that of its kind.
import { readdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import type { IToken } from 'chevrotain'
import fc from 'fast-check'
import { beforeAll, describe, expect, it } from 'vitest'
import textmate from 'vscode-textmate'
import { conflictsIn } from '../../server/src/syntax/conflicts.ts'
import * as T from '../../server/src/syntax/tokens.ts'
import { loadGrammar } from './grammar.ts'
import { jobs, nearly } from './texts.ts'

let grammar: textmate.IGrammar
beforeAll(async () => {
  grammar = await loadGrammar()
})

const words = [
  'keyword.other',
  'keyword.other.unit',
  'keyword.control',
  'keyword.control.import',
  'constant.language',
  'constant.other.fit',
  'variable.other',
  'entity.name.type',
  'entity.other.attribute-name',
]

/** The scopes a kind of token may have. */
const scopesOf: Readonly<Record<string, readonly string[]>> = {
  Comment: ['comment.line.number-sign', 'comment.block.documentation'],
  Text: ['string.quoted.double', 'constant.character.escape'],
  OpenText: ['string.quoted.double', 'constant.character.escape'],
  CurlyText: ['string.quoted.other'],
  DateTime: ['constant.numeric.date'],
  TwoSided: ['constant.numeric'],
  Amount: ['constant.numeric'],
  Blank: ['keyword.other.blank'],
  PlusMinus: ['keyword.operator'],
  To: ['keyword.operator'],
  Plus: ['keyword.operator'],
  Minus: ['keyword.operator'],
  Sign: ['keyword.operator'],
  Times: ['keyword.operator'],
  Over: ['keyword.operator'],
  FactName: ['support.type.property-name', 'variable.other.property', 'keyword.control'],
  Comma: ['punctuation.separator'],
  Opening: ['punctuation.section.block.begin'],
  Closing: ['punctuation.section.block.end'],
  LeftBracket: ['punctuation.definition.provenance.begin'],
  RightBracket: ['punctuation.definition.provenance.end'],
  Word: words,
  BlockKind: ['storage.type.block'],
}

/** The scope of every character, line by line as an editor asks. */
function coloured(text: string): readonly string[] {
  const scopes: string[] = []
  let stack = textmate.INITIAL
  for (const line of text.split(/(?<=\n)/)) {
    const { tokens, ruleStack } = grammar.tokenizeLine(line.replace(/\r?\n$/, ''), stack)
    stack = ruleStack
    const of = tokens.flatMap(({ startIndex, endIndex, scopes: all }) =>
      Array<string>(endIndex - startIndex).fill((all.at(-1) ?? '').replace('.shaftwright', '')),
    )
    scopes.push(...Array.from({ length: line.length }, (_, i) => of[i] ?? ''))
  }
  return scopes
}

/** Tokens of another colour than their kind has, or of several. */
function disagreements(text: string, expected: (token: IToken) => readonly string[] | undefined) {
  const scopes = coloured(text)
  const { tokens, trivia } = T.lex(text)
  return [...tokens, ...trivia].flatMap((token) => {
    const allowed = expected(token)
    if (!allowed) return []
    const own = new Set(scopes.slice(token.startOffset, T.endOf(token)))
    const isText = token.tokenType === T.Text || token.tokenType === T.OpenText
    // `35,2`: whether it is one number or two is told from what stands round it, so the grammar colours its comma as one.
    const isSeparated = token.tokenType === T.Amount && token.image.includes(',')
    if (isSeparated) own.delete('punctuation.separator')
    const one = own.size === 1 || isText
    return one && [...own].every((scope) => allowed.includes(scope))
      ? []
      : [`${token.tokenType.name} ${token.image}: ${[...own].join(', ')}`]
  })
}

const examples = resolve(import.meta.dirname, '../../docs/examples')
const demos = readdirSync(examples, { recursive: true, encoding: 'utf8' }).filter((file) =>
  file.endsWith('.wright'),
)

describe('each token has the colour of its kind', () => {
  it.each(demos)('in %s', (demo) => {
    const text = readFileSync(join(examples, demo), 'utf8')
    expect(disagreements(text, ({ tokenType }) => scopesOf[tokenType.name])).toEqual([])
  })

  it('in a merge conflict: its marks, and what is read of it', () => {
    const version = (mm: number) => `  length: ${mm} mm\n`
    const marks = ['<<<<<<< HEAD\n', '||||||| base\n', '=======\n', '>>>>>>> other\n'] as const
    const text = `shaft {\n${marks[0]}${version(1)}${marks[1]}${version(2)}${marks[2]}${version(3)}${marks[3]}}\n`
    expect(conflictsIn(text)).toHaveLength(1)
    expect(disagreements(text, ({ tokenType }) => scopesOf[tokenType.name])).toEqual([])
    const scopes = coloured(text)
    for (const mark of marks) {
      const at = text.indexOf(mark)
      const own = new Set(scopes.slice(at, at + mark.length - 1))
      expect([...own], mark).toEqual(['invalid.illegal.conflict'])
    }
  })

  it('in jobs whole and broken', () => {
    fc.assert(
      fc.property(jobs, (text) => {
        expect(disagreements(text, ({ tokenType }) => scopesOf[tokenType.name])).toEqual([])
      }),
    )
  })

  it('in lines of any values, signs and words', () => {
    // What begins a line with a brace on it is a kind to the lexer, whatever it is and whatever stands between.
    const expected = ({ tokenType }: IToken) =>
      tokenType === T.BlockKind ? ['storage.type.block', ...words] : scopesOf[tokenType.name]
    fc.assert(
      fc.property(nearly, (text) => {
        expect(disagreements(text, expected)).toEqual([])
      }),
      { numRuns: 2000, examples: [['job ? mm  {\n']] },
    )
  })
})
