import { units } from '../../src/quantity/units.ts'
import type { BlockKind, Fact } from '../../src/vocabulary/block.ts'
import { vocabulary } from '../../src/vocabulary/index.ts'

interface Named {
  readonly name: string
}

/** A TextMate rule, as far as this grammar needs it. */
interface Rule extends Partial<Named> {
  readonly match?: string
  readonly begin?: string
  readonly end?: string
  readonly captures?: Readonly<Record<string, Named>>
  readonly beginCaptures?: Readonly<Record<string, Named>>
  readonly endCaptures?: Readonly<Record<string, Named>>
  readonly patterns?: readonly Rule[]
  readonly include?: string
}

const kinds = Object.values(vocabulary) as unknown as readonly BlockKind[]
const facts = kinds.flatMap((kind) => Object.entries(kind.facts) as [string, Fact][])
const everyFact = [...facts.map(([, fact]) => fact), ...kinds.flatMap((kind) => kind.others ?? [])]

/** One of the words: longest first, so that none is taken for the start of another. */
const oneOf = (words: Iterable<string>): string =>
  [...new Set(words)]
    .sort((a, b) => b.length - a.length || (a < b ? -1 : 1))
    .map((word) => word.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&'))
    .join('|')

// Words as the lexer has them: letters of any script, and the signs that names and units are written with.
const inWord = '[\\p{L}\\p{M}\\p{N}_%°µ\\-·/^]'
const start = `(?<!${inWord})(?<!\\.)`
const end = `(?!${inWord})`
const name = '[\\p{L}_][\\p{L}\\p{M}\\p{N}_\\-·/^]*'
const path = `${name}(?:\\.${name})*`
const number = '(?:\\d+-\\d+/\\d+|\\d+ \\d+/\\d+|\\d+/\\d+|\\d+(?:\\.\\d+)?(?:[eE][+-]?\\d+(?!\\p{L}))?)'
const unit = `(${oneOf(units.flatMap((u) => [u.name, ...u.aliases]))})${end}`

const scope = (of: string): Named => ({ name: `${of}.shaftwright` })
const include = (...names: readonly string[]): readonly Rule[] => names.map((of) => ({ include: `#${of}` }))
const factNamed = (names: string, of: string): Rule => ({
  match: `${start}(${names})[ \\t]*(:)`,
  captures: { '1': scope(of), '2': scope('punctuation.separator.key-value') },
})

const repository: Readonly<Record<string, Rule>> = {
  comment: {
    patterns: [
      { ...scope('comment.block.documentation'), match: '##.*$' },
      { ...scope('comment.line.number-sign'), match: '#.*$' },
    ],
  },
  text: {
    ...scope('string.quoted.double'),
    begin: '"',
    end: '"|$',
    patterns: [{ ...scope('constant.character.escape'), match: '\\\\.' }],
  },
  // A kind is one only where a brace follows on the line: `motor` elsewhere is a name.
  header: {
    begin: `${start}(${oneOf(kinds.map(({ kind }) => kind))})(?=(?:[ \\t]+(?:"[^"]*"|[^\\s{}"#:,\\[\\]]+))*[ \\t]*\\{)`,
    beginCaptures: { '1': scope('storage.type.block') },
    end: '(?=\\{)|$',
    patterns: [
      ...include('text'),
      {
        match: `${start}(after)[ \\t]+(${path})`,
        captures: { '1': scope('keyword.control'), '2': scope('variable.other') },
      },
      { ...scope('entity.name.type'), match: path },
    ],
  },
  use: { match: '^\\s*(use)(?=[ \\t]*")', captures: { '1': scope('keyword.control.import') } },
  fact: {
    patterns: [
      factNamed('like', 'keyword.control'),
      factNamed(oneOf(facts.map(([of]) => of)), 'support.type.property-name'),
      factNamed(name, 'variable.other.property'),
    ],
  },
  provenance: {
    begin: '\\[',
    beginCaptures: { '0': scope('punctuation.definition.provenance.begin') },
    end: '\\]|$',
    endCaptures: { '0': scope('punctuation.definition.provenance.end') },
    patterns: [
      ...include('comment', 'text', 'date'),
      { ...scope('entity.other.attribute-name'), match: name },
    ],
  },
  date: {
    ...scope('constant.numeric.date'),
    match: '\\d{4}-\\d{2}-\\d{2}(?:T\\d{2}:\\d{2}(?::\\d{2})?(?:Z|[+-]\\d{2}:\\d{2})?)?(?![\\p{L}\\d])',
  },
  tolerance: {
    match: `([+\\-−]${number}\\s?/\\s?[+\\-−]${number})(?:[ \\t]*${unit})?`,
    captures: { '1': scope('constant.numeric'), '2': scope('keyword.other.unit') },
  },
  amount: {
    match: `(?<![\\p{L}_])(${number})(?:[ \\t]*${unit})?`,
    captures: { '1': scope('constant.numeric'), '2': scope('keyword.other.unit') },
  },
  choice: {
    ...scope('constant.language'),
    match: `${start}(?:${oneOf(everyFact.flatMap(({ shape }) => shape.choices ?? []))})${end}(?!\\.)`,
  },
  fit: { ...scope('constant.other.fit'), match: `${start}(?:h|H|js|JS)\\d{1,2}${end}` },
  limit: { ...scope('keyword.other'), match: `${start}(?:max|min|to|class)${end}` },
  reference: { ...scope('variable.other'), match: path },
  operator: { ...scope('keyword.operator'), match: '\\+/-|±|\\.\\.|[+\\-−*×/÷]' },
  punctuation: {
    patterns: [
      { ...scope('punctuation.section.block.begin'), match: '\\{' },
      { ...scope('punctuation.section.block.end'), match: '\\}' },
      { ...scope('punctuation.separator'), match: ',' },
    ],
  },
}

/** The TextMate grammar, from the vocabulary and the units: colours before the server has started, and where there is none. */
export function grammar(): string {
  const patterns = include(...Object.keys(repository))
  const rules = {
    name: 'Shaftwright job',
    scopeName: 'source.shaftwright',
    fileTypes: ['wright'],
    patterns,
    repository,
  }
  return `${JSON.stringify(rules, undefined, 2)}\n`
}
