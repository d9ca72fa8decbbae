import { units } from '../../src/quantity/units.ts'
import { sources } from '../../src/syntax/tokens.ts'
import type { Fact } from '../../src/vocabulary/block.ts'
import { blockKinds } from '../../src/vocabulary/index.ts'

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

const facts = blockKinds.flatMap((kind) => Object.entries(kind.facts) as [string, Fact][])
const everyFact = [...facts.map(([, fact]) => fact), ...blockKinds.flatMap((kind) => kind.others ?? [])]

/** One of the words: longest first, so that none is taken for the start of another. */
const oneOf = (words: Iterable<string>): string =>
  [...new Set(words)]
    .sort((a, b) => b.length - a.length || (a < b ? -1 : 1))
    .map((word) => word.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&'))
    .join('|')

// Words as the lexer has them. It counts in UTF-16 units, this grammar in whole characters.
const letter = `${sources.letter}\\x{10000}-\\x{10FFFF}`
const inWord = `[${letter}0-9\\-·/^]`
const end = `(?!${inWord}|\\.[A-Za-z0-9])`
const word = `[${letter}](?:${inWord}|\\.(?=[A-Za-z0-9]))*`
const { number } = sources
// `ratio: 2.5  turns: opposite`: what a colon follows is no unit.
const unit = `(${oneOf(units.flatMap((u) => [u.name, ...u.aliases]))})${end}(?!\\s*:)`

const scope = (of: string): Named => ({ name: `${of}.shaftwright` })
const include = (...names: readonly string[]): readonly Rule[] => names.map((of) => ({ include: `#${of}` }))
const factNamed = (names: string, of: string): Rule => ({
  match: `(${names})\\s*(:)`,
  captures: { '1': scope(of), '2': scope('punctuation.separator.key-value') },
})

const escaped = [{ ...scope('constant.character.escape'), match: '\\\\.' }]

const repository: Readonly<Record<string, Rule>> = {
  // Git's own marks, as the lexer has them; whether they make a whole conflict no line can tell.
  conflict: { ...scope('invalid.illegal.conflict'), match: '^(?:(?:<{7}|\\|{7}|>{7})(?: .*)?|={7})$' },
  comment: {
    patterns: [
      { ...scope('comment.block.documentation'), match: '##.*$' },
      { ...scope('comment.line.number-sign'), match: '#.*$' },
    ],
  },
  'escaped-quote': { match: '\\\\"' },
  text: {
    ...scope('string.quoted.double'),
    begin: `"(?=${sources.text.slice(1)})`,
    end: '"',
    patterns: escaped,
  },
  'open-text': {
    ...scope('string.quoted.double'),
    begin: '"',
    end: `(?=${sources.textEnd})|$`,
    patterns: escaped,
  },
  // As word processors make them: read, and told.
  'curly-text': { ...scope('string.quoted.other'), match: sources.curlyText },
  // A kind is one only at the head of a line or behind a brace, and where a brace follows on the line: `motor` elsewhere is a name.
  header: {
    begin: `(?<=^|[{}])\\s*(${oneOf(blockKinds.map(({ kind }) => kind))})(?=(?:[ \\t]+(?:"[^"]*"|"[^"{}#]*(?=\\{)|[^\\s{}"#:,\\[\\]]+))*[ \\t]*\\{)`,
    beginCaptures: { '1': scope('storage.type.block') },
    end: '(?=\\{)|$',
    patterns: [
      ...include('text', 'open-text', 'curly-text', 'date', 'tolerance', 'amount', 'blank'),
      {
        match: `(after)[ \\t]+(${word})`,
        captures: { '1': scope('keyword.control'), '2': scope('variable.other') },
      },
      { ...scope('entity.name.type'), match: word },
      ...include('operator'),
    ],
  },
  use: { match: '^\\s*(use)(?=[ \\t]*")', captures: { '1': scope('keyword.control.import') } },
  fact: {
    patterns: [
      factNamed('like', 'keyword.control'),
      factNamed(oneOf(facts.map(([of]) => of)), 'support.type.property-name'),
      factNamed(word, 'variable.other.property'),
    ],
  },
  provenance: {
    begin: '\\[',
    beginCaptures: { '0': scope('punctuation.definition.provenance.begin') },
    end: '\\]|(?=[{}])|$',
    endCaptures: { '0': scope('punctuation.definition.provenance.end') },
    patterns: [
      ...include('comment', 'escaped-quote', 'text'),
      {
        ...scope('string.quoted.double'),
        begin: '"',
        end: `(?=${sources.textEnd}|\\])|$`,
        patterns: escaped,
      },
      ...include('curly-text', 'date', 'amount', 'blank'),
      { ...scope('entity.other.attribute-name'), match: word },
    ],
  },
  date: { ...scope('constant.numeric.date'), match: sources.date },
  tolerance: {
    match: `(${sources.twoSided})(?:\\s*${unit})?`,
    captures: { '1': scope('constant.numeric'), '2': scope('keyword.other.unit') },
  },
  amount: {
    match: `(${number})(?:\\s*${unit})?`,
    captures: { '1': scope('constant.numeric'), '2': scope('keyword.other.unit') },
  },
  blank: {
    match: `(\\?)(?:\\s*${unit})?`,
    captures: { '1': scope('keyword.other.blank'), '2': scope('keyword.other.unit') },
  },
  choice: {
    ...scope('constant.language'),
    match: `(?:${oneOf(everyFact.flatMap(({ shape }) => shape.choices ?? []))})${end}`,
  },
  fit: { ...scope('constant.other.fit'), match: `(?:h|H|js|JS)\\d{1,2}${end}` },
  limit: { ...scope('keyword.other'), match: `(?:max|min|to|class)${end}` },
  reference: { ...scope('variable.other'), match: word },
  operator: { ...scope('keyword.operator'), match: `${sources.plusMinus}|\\.\\.|${sources.minus}|[+*×/÷]` },
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
