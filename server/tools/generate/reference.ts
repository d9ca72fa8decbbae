import { formatNumber } from '../../src/quantity/format.ts'
import { type Kind, kinds } from '../../src/quantity/kinds.ts'
import { otherSpellings, type Unit, unitsOf } from '../../src/quantity/units.ts'
import {
  type BlockKind,
  type Fact,
  formatBeside,
  formatRequirement,
  type Heading,
  needsOf,
} from '../../src/vocabulary/block.ts'
import { blockKinds } from '../../src/vocabulary/index.ts'
import { formatAllowed } from '../../src/vocabulary/shape.ts'
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
  // A conductor is known by its gauge, so `formatSi` shows no square inches.
  return [...new Set([metric, quantity === 'area' ? 'AWG' : inch])].map(code).join(' or ')
}

const factRow = (name: string, fact: Fact): readonly string[] => {
  const { shape, doc, example } = fact
  return [
    name,
    doc,
    shape.words,
    formatAllowed(shape) ?? '',
    unitsShown(shape.quantity),
    code(example),
    formatRequirement(fact) ?? '',
  ]
}

function section(kind: BlockKind): string {
  const rows = Object.entries(kind.facts).map(([name, fact]) => factRow(code(name), fact))
  if (kind.others) rows.push(factRow('any other name', kind.others))
  const needs = needsOf(kind)
  const notes = [
    `Goes in: ${kind.within.map((place) => (place === 'top' ? 'the file itself' : code(place))).join(', ')}.`,
    kind.many ? 'There may be several.' : 'At most one.',
    ...(kind.heading === 'none' ? ['It needs a name only in a parts library.'] : []),
    ...(needs.length > 0
      ? [
          `Needed ${kind.kind === 'job' ? 'in the file' : 'inside it'}: ${needs.map((need) => `${code(need.kind)} from ${need.from}${formatBeside(need)}`).join(', ')}.`,
        ]
      : []),
    ...(kind.bare ? [`A line without a colon is read as ${code(kind.bare)}.`] : []),
  ]
  return `### ${kind.kind}

${code(`${kind.kind}${headings[kind.heading]} { … }`)}

${kind.doc}

${notes.join(' ')}

${table(['fact', 'meaning', 'value', 'allowed', 'shown in', 'example', 'needed from'], rows)}

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

[language.md](language.md) explains the language. [status.md](status.md) lists the facts that each status asks for.

## Blocks

${blockKinds.map(section).join('\n\n')}

${valueForms}

## Units

Every amount needs a unit. Any unit of the right kind will do. A torque is not an energy, rpm is not Hz, and an angle is not a ratio.

${table(
  ['kind', 'unit', 'also written', 'meaning', 'in SI', 'source'],
  (Object.keys(kinds) as Kind[]).flatMap(unitRows),
)}
`
