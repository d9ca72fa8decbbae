import type { Check } from '../checks/check.ts'
import type { Block, Value } from '../job/model.ts'
import { formatNumber } from '../quantity/format.ts'
import { kinds, type UnitSystem } from '../quantity/kinds.ts'
import { otherSpellings, type Unit, unitsOf } from '../quantity/units.ts'
import type { BlockKind, Fact } from '../vocabulary/block.ts'
import { vocabulary } from '../vocabulary/index.ts'
import { checkLink } from './hover-sources.ts'
import { code, example, list, paragraphs, plain } from './markdown.ts'
import { sayBand, sayProvenance, sayValue } from './say-value.ts'

const places = (kind: BlockKind): string =>
  kind.within.map((name) => (name === 'top' ? 'at the top of the file' : `in a ${code(name)}`)).join(' or ')

/** A kind of block: what it is, where it may stand, what it can say. */
export function kindMarkdown(kind: BlockKind): string {
  const facts = Object.entries(kind.facts).map(
    ([name, fact]) => `${code(name)}${fact.required ? ' (required)' : ''}`,
  )
  const inside = Object.values(vocabulary).flatMap((other) => {
    const places: readonly string[] = other.within
    return places.includes(kind.kind) ? [other.kind] : []
  })
  return paragraphs(
    `**${kind.kind}**`,
    kind.doc,
    list([
      `Stands ${places(kind)}`,
      kind.needs && `Needs ${kind.needs.map(code).join(', ')} inside`,
      facts.length > 0 ? `Facts: ${facts.join(', ')}` : undefined,
      inside.length > 0 ? `Blocks: ${inside.map(code).join(', ')}` : undefined,
    ]),
    example(kind.example),
  )
}

/** One block of the job: what it is and everything it says. */
export function blockMarkdown(block: Block, kind: BlockKind, system: UnitSystem): string {
  const facts = [...block.facts].flatMap(([name, value]) => {
    const fact = kind.facts[name]
    return fact
      ? [`${name}: ${sayValue(value, fact.shape, system)}${value.origin ? ' (inherited)' : ''}`]
      : []
  })
  const inside = block.children.map((child) => code(`${child.kind} ${child.name ?? ''}`.trim()))
  return paragraphs(
    `**${kind.kind}** ${code(block.path)}${block.title === undefined ? '' : `: ${plain(block.title)}`}`,
    block.node.doc && plain(block.node.doc),
    kind.doc,
    list([...facts, inside.length > 0 ? `with ${inside.join(', ')}` : undefined]),
  )
}

/** A check, as a concession names it. */
export const checkMarkdown = (check: Check, docs: string | undefined): string => {
  const { title, why, source } = check
  return paragraphs(
    `**${checkLink(check, docs)}**`,
    `${title}. ${why}`,
    `Source (${source.basis}): ${source.text}`,
  )
}

interface Said {
  readonly kind: string
  readonly name: string
  readonly fact: Fact
  readonly value?: Value<unknown> | undefined
  readonly system: UnitSystem
}

/** A fact: its value here, what it is, how it is written and bounded. */
export function factMarkdown({ kind, name, fact, value, system }: Said): string {
  const { shape } = fact
  return paragraphs(
    `**${kind}: ${name}**`,
    fact.doc,
    value?.node.doc && plain(value.node.doc),
    list([
      value && `Here: ${sayValue(value, shape, system)}`,
      value?.origin && 'Inherited: the block says what it is `like`',
      value?.provenance && `From: ${sayProvenance(value.provenance)}`,
      `Expected: ${shape.words}`,
      shape.allowed && shape.quantity && `Allowed: ${sayBand(shape.allowed, shape.quantity, system)}`,
      fact.required ? 'Required' : undefined,
    ]),
    example(`${name}: ${fact.example}`),
  )
}

/** What a unit is, its size, and where that is from. */
export function unitMarkdown(unit: Unit): string {
  const others = otherSpellings(unit)
  const base = unitsOf(unit.kind).find(({ si, offset }) => si === 1 && offset === 0)
  const size =
    unit.named || base === unit || !base
      ? undefined
      : `1 ${unit.name} = ${formatNumber(unit.si + unit.offset, 8)} ${base.name}`
  return paragraphs(
    `**${unit.name}**: ${unit.doc}`,
    list([
      `Unit of ${kinds[unit.kind].words.replace(/^an? /, '')}`,
      size,
      others.length > 0 ? `Also written ${others.map(code).join(', ')}` : undefined,
      `Source: ${unit.source}`,
    ]),
  )
}
