import { formatNumber } from '../../src/quantity/format.ts'
import { type Kind, kinds } from '../../src/quantity/kinds.ts'
import { otherSpellings, type Unit, unitsOf } from '../../src/quantity/units.ts'
import type { BlockKind, Fact, Heading } from '../../src/vocabulary/block.ts'
import { vocabulary } from '../../src/vocabulary/index.ts'
import { sayAllowed } from '../../src/vocabulary/shape.ts'
import { code, fence, madeBy, table } from './markdown.ts'
import { valueForms } from './value-forms.ts'

const headings: Readonly<Record<Heading, string>> = {
  none: '',
  name: ' name',
  title: ' "title"',
  after: ' after reading',
  check: ' area/check',
}

function unitsShown(quantity: Kind | undefined): string {
  if (!quantity || quantity === 'ratio') return ''
  const { metric, inch } = kinds[quantity].shown
  return [...new Set([metric, inch])].map(code).join(' or ')
}

const factRow = (name: string, { shape, doc, example, required }: Fact): readonly string[] => [
  name,
  doc,
  shape.words,
  sayAllowed(shape) ?? '',
  unitsShown(shape.quantity),
  code(example),
  required ? 'yes' : '',
]

function section(kind: BlockKind): string {
  const rows = Object.entries(kind.facts).map(([name, fact]) => factRow(code(name), fact))
  if (kind.others) rows.push(factRow('any other name', kind.others))
  const notes = [
    `Stands in: ${kind.within.map((place) => (place === 'top' ? 'the file itself' : code(place))).join(', ')}.`,
    kind.many ? 'There may be several.' : 'At most one.',
    ...(kind.heading === 'none' ? ['A name is only needed in a parts library.'] : []),
    ...(kind.needs ? [`Needs inside it: ${kind.needs.map(code).join(', ')}.`] : []),
    ...(kind.bare ? [`A line without a colon is read as ${code(kind.bare)}.`] : []),
  ]
  return `### ${kind.kind}

${code(`${kind.kind}${headings[kind.heading]} { … }`)}

${kind.doc}

${notes.join(' ')}

${table(['fact', 'what it is', 'value', 'allowed', 'shown in', 'example', 'required'], rows)}

${fence(kind.example)}`
}

const baseOf = (kind: Kind): string =>
  unitsOf(kind).find(({ si, offset }) => si === 1 && offset === 0)?.name ?? ''

function inSi({ kind, si, offset, named }: Unit): string {
  if (named) return 'by its table'
  const added = offset === 0 ? '' : `, plus ${formatNumber(offset, 7)} ${baseOf(kind)}`
  return `${formatNumber(si, 10)} ${baseOf(kind)}`.trim() + added
}

const unitRows = (kind: Kind): readonly (readonly string[])[] =>
  unitsOf(kind).map((unit) => [
    kind,
    code(unit.name),
    otherSpellings(unit).map(code).join(', '),
    unit.doc,
    inSi(unit),
    unit.source,
  ])

/** `docs/reference.md`: every block kind and fact, every form of a value, every unit. */
export const reference = (): string => `${madeBy}
# Blocks, facts, values and units

How the language works is in [language.md](language.md).

## Blocks

${(Object.values(vocabulary) as unknown as readonly BlockKind[]).map(section).join('\n\n')}

${valueForms}

## Units

A unit is part of the value; any unit of the right kind will do. A torque is not an energy, rpm is not Hz, an angle is not a ratio.

${table(
  ['kind', 'unit', 'also written', 'what it is', 'in SI', 'source'],
  (Object.keys(kinds) as Kind[]).flatMap(unitRows),
)}
`
