import { formatBand } from '../../src/quantity/format.ts'
import { type Kind, kinds } from '../../src/quantity/kinds.ts'
import { unitsOf } from '../../src/quantity/units.ts'
import type { BlockKind, Fact } from '../../src/vocabulary/block.ts'
import { vocabulary } from '../../src/vocabulary/index.ts'

const cell = (text: string): string => text.replaceAll('|', '\\|').replaceAll('\n', ' ')

const heading: Readonly<Record<BlockKind['heading'], string>> = {
  none: 'a name is only needed in a parts library',
  name: 'a name',
  title: 'a title in quotes',
  after: '`after` and the name of a reading',
  check: 'the id of a check',
}

function factRow(name: string, fact: Fact): string {
  const { shape } = fact
  const range = shape.allowed && shape.quantity ? `; ${formatBand(shape.allowed, shape.quantity)}` : ''
  return `| \`${name}\`${fact.required ? ' (needed)' : ''} | ${cell(fact.doc)} | ${cell(shape.words)}${range} | \`${cell(fact.example)}\` |`
}

function section(kind: BlockKind): string {
  const facts = Object.entries(kind.facts)
  return [
    `## ${kind.kind}`,
    '',
    kind.doc,
    '',
    `Stands in: ${kind.within.map((place) => (place === 'top' ? 'the file itself' : `\`${place}\``)).join(', ')}. ${kind.many ? 'There may be several.' : 'At most one.'} After the kind comes: ${heading[kind.heading]}.`,
    '',
    '| fact | what it is | how it is written | example |',
    '|:--|:--|:--|:--|',
    ...facts.map(([name, fact]) => factRow(name, fact)),
    ...(kind.others ? [factRow('any other name', kind.others)] : []),
    '',
    '```wright',
    kind.example,
    '```',
  ].join('\n')
}

const unitRow = (kind: Kind): string => {
  const names = unitsOf(kind).map((unit) =>
    unit.aliases.length > 0
      ? `\`${unit.name}\` (${unit.aliases.map((a) => `\`${a}\``).join(', ')})`
      : `\`${unit.name}\``,
  )
  return `| ${kind} | ${names.length > 0 ? names.join(', ') : 'none: written bare'} |`
}

/** `docs/reference.md`: every block kind, fact and unit. */
export const reference = (): string => `# Blocks, facts and units

Made by \`npm run generate\` from the vocabulary. How the language works is in [language.md](language.md).

${Object.values(vocabulary)
  .map((kind) => section(kind as unknown as BlockKind))
  .join('\n\n')}

Every block may also say \`like: NAME\`: what it does not say itself is then as in the block of the same kind that goes by that name.

## Units

Conversions: SI Brochure, 9th edition; NIST SP 811 (2008), appendix B; wire gauges: ASTM B258.

| kind | units |
|:--|:--|
${(Object.keys(kinds) as Kind[]).map(unitRow).join('\n')}
`
