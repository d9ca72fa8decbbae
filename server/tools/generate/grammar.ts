import { units } from '../../src/quantity/units.ts'
import type { BlockKind } from '../../src/vocabulary/block.ts'
import { vocabulary } from '../../src/vocabulary/index.ts'

const escaped = (word: string): string => word.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&')
/** Longest first, so that no word is taken for the start of another. */
const anyOf = (words: Iterable<string>): string =>
  [...new Set(words)]
    .sort((a, b) => b.length - a.length || a.localeCompare(b, 'en'))
    .map(escaped)
    .join('|')

const notWord = '(?![\\p{L}\\p{N}_\\-·²³/])'
const number = '(?:\\d+-\\d+/\\d+|\\d+ \\d+/\\d+|\\d+/\\d+|\\d+(?:\\.\\d+)?(?:[eE][+-]?\\d+)?)'

/** TextMate grammar, from the vocabulary and the units. */
export function grammar(): string {
  const kinds = Object.values(vocabulary) as unknown as BlockKind[]
  const facts = kinds.flatMap((kind) => Object.keys(kind.facts))
  const choices = kinds.flatMap((kind) =>
    Object.values(kind.facts).flatMap((fact) => fact.shape.choices ?? []),
  )
  const unitNames = units.flatMap((unit) => [unit.name, ...unit.aliases])
  const rules = {
    scopeName: 'source.shaftwright',
    name: 'Shaftwright',
    fileTypes: ['wright'],
    patterns: [
      { name: 'comment.line.documentation.shaftwright', match: '##.*$' },
      { name: 'comment.line.number-sign.shaftwright', match: '#.*$' },
      {
        name: 'string.quoted.double.shaftwright',
        begin: '"',
        end: '"|$',
        patterns: [{ name: 'constant.character.escape.shaftwright', match: '\\\\.' }],
      },
      {
        begin: '\\[',
        end: '\\]|$',
        name: 'meta.provenance.shaftwright',
        patterns: [
          { name: 'string.quoted.double.shaftwright', match: '"[^"]*"' },
          { name: 'storage.modifier.provenance.shaftwright', match: '[\\p{L}][\\p{L}\\p{N}_-]*' },
        ],
      },
      {
        match: `(?:^|(?<=[{}]))\\s*(${anyOf([...kinds.map((kind) => kind.kind)])})(?=\\s[^:#\\n]*\\{|\\s*\\{)`,
        captures: { 1: { name: 'keyword.control.block.shaftwright' } },
      },
      { match: '^\\s*(use)(?=\\s+")', captures: { 1: { name: 'keyword.control.import.shaftwright' } } },
      {
        match: `(${anyOf([...facts, 'like'])})(?=\\s*:)`,
        captures: { 1: { name: 'variable.other.property.shaftwright' } },
      },
      {
        match: '([\\p{L}_][\\p{L}\\p{N}_-]*)(?=\\s*:)',
        captures: { 1: { name: 'variable.other.property.own.shaftwright' } },
      },
      {
        name: 'constant.other.date.shaftwright',
        match: '\\b\\d{4}-\\d{2}-\\d{2}(?:T[\\d:]+(?:Z|[+-]\\d{2}:\\d{2})?)?',
      },
      {
        match: `([+\\-−±]?${number})\\s*(${anyOf(unitNames)})${notWord}`,
        captures: {
          1: { name: 'constant.numeric.shaftwright' },
          2: { name: 'keyword.other.unit.shaftwright' },
        },
      },
      { name: 'constant.numeric.shaftwright', match: `(?<![\\p{L}\\p{N}_])${number}` },
      {
        name: 'constant.language.shaftwright',
        match: `(?<![\\p{L}\\p{N}_\\-./])(?:${anyOf([...choices, 'max', 'min'])})${notWord}`,
      },
      {
        name: 'keyword.operator.word.shaftwright',
        match: '(?<![\\p{L}\\p{N}_\\-.])(?:after|to|class)(?=\\s)',
      },
      { name: 'keyword.operator.shaftwright', match: '\\.\\.|±|\\+/-|[+*/×÷−-](?=\\s)' },
      {
        name: 'entity.name.shaftwright',
        match: '[\\p{L}_][\\p{L}\\p{N}_\\-·²³/]*(?:\\.[\\p{L}][\\p{L}\\p{N}_\\-]*)*',
      },
      { name: 'punctuation.shaftwright', match: '[{},:]' },
    ],
  }
  return `${JSON.stringify(rules, null, 2)}\n`
}
