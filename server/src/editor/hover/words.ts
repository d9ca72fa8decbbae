import {
  code,
  example,
  joined,
  list,
  type Markdown,
  md,
  ours,
  paragraphs,
  plain,
  prose,
} from '../../areas/common/markdown.ts'
import type { Check } from '../../checks/check.ts'
import type { Block, Value } from '../../job/model.ts'
import { formatNumber } from '../../quantity/format.ts'
import { kinds, type UnitSystem } from '../../quantity/kinds.ts'
import { otherSpellings, type Unit, unitsOf } from '../../quantity/units.ts'
import {
  type BlockKind,
  type Fact,
  formatBeside,
  formatRequirement,
  needsOf,
} from '../../vocabulary/block.ts'
import { vocabulary } from '../../vocabulary/index.ts'
import { formatBandWith, formatProvenance, formatValue } from './format-value.ts'
import { checkLink } from './sources.ts'

const places = (kind: BlockKind): Markdown =>
  joined(
    kind.within.map((name) => (name === 'top' ? md`at the top of the file` : md`in a ${code(name)}`)),
    ' or ',
  )

/** A kind of block: what it is, where it may stand, what it can say. */
export function kindMarkdown(kind: BlockKind): Markdown {
  const facts = Object.entries(kind.facts).map(([name, fact]) =>
    fact.from ? md`${code(name)} (${prose(fact.from)})` : code(name),
  )
  const needs = needsOf(kind)
  const inside = Object.values(vocabulary).flatMap((other) => {
    const places: readonly string[] = other.within
    return places.includes(kind.kind) ? [other.kind] : []
  })
  return paragraphs(
    md`**${prose(kind.kind)}**`,
    ours(kind.doc),
    list([
      md`Goes ${places(kind)}`,
      needs.length > 0
        ? md`Needs ${prose(kind.kind === 'job' ? 'in the file' : 'inside')}: ${joined(
            needs.map((need) => md`${code(need.kind)} (${prose(`${need.from}${formatBeside(need)}`)})`),
            ', ',
          )}`
        : undefined,
      facts.length > 0
        ? md`Facts, with the status that first asks for them: ${joined(facts, ', ')}`
        : undefined,
      inside.length > 0 ? md`Blocks: ${joined(inside.map(code), ', ')}` : undefined,
    ]),
    example(kind.example),
  )
}

/** One block of the job: what it is and everything it says. */
export function blockMarkdown(block: Block, kind: BlockKind, system: UnitSystem): Markdown {
  const facts = [...block.facts].flatMap(([name, value]) => {
    const fact = kind.facts[name]
    return fact ? [md`${prose(name)}: ${formatValue(value, fact.shape, system)}${inheritedFrom(value)}`] : []
  })
  const inside = block.children.map((child) => code(`${child.kind} ${child.name ?? ''}`.trim()))
  return paragraphs(
    block.title === undefined
      ? md`**${prose(kind.kind)}** ${code(block.path)}`
      : md`**${prose(kind.kind)}** ${code(block.path)}: ${plain(block.title)}`,
    block.head.taken && md`Taken from ${code(block.head.taken.of)}.`,
    block.node.doc ? plain(block.node.doc) : undefined,
    ours(kind.doc),
    list([...facts, inside.length > 0 ? md`with ${joined(inside, ', ')}` : undefined]),
  )
}

const inheritedFrom = ({ at, origin }: Value<unknown>): Markdown =>
  at.taken ? md` (from ${code(at.taken.of)})` : origin ? md` (inherited)` : md``

/** A check, as a concession names it. */
export const checkMarkdown = (check: Check, docs: string | undefined): Markdown => {
  const { title, why, source } = check
  return paragraphs(
    md`**${checkLink(check, docs)}**`,
    md`${prose(title)}. ${ours(why, docs && `${docs}${check.id}.md`)}`,
    prose(`Source (${source.basis}): ${source.text}`),
  )
}

interface FactHover {
  readonly kind: string
  readonly name: string
  readonly fact: Fact
  readonly value?: Value<unknown> | undefined
  /** What the block says instead of, where its drive is `like` another. */
  readonly replaced?: { readonly value: Value<unknown>; readonly of: string } | undefined
  readonly system: UnitSystem
}

/** A fact: its value here, what it is, how it is written and bounded. */
export function factMarkdown({ kind, name, fact, value, replaced, system }: FactHover): Markdown {
  const { shape } = fact
  const requirement = formatRequirement(fact)
  return paragraphs(
    md`**${plain(kind)}: ${plain(name)}**`,
    ours(fact.doc),
    value?.node.doc ? plain(value.node.doc) : undefined,
    list([
      value && md`Here: ${formatValue(value, shape, system)}`,
      value?.at.taken
        ? md`Taken from ${code(value.at.taken.of)}`
        : value?.origin && md`Inherited through ${code('like')}`,
      replaced && md`Replaces ${formatValue(replaced.value, shape, system)} of ${code(replaced.of)}`,
      value?.provenance && md`From: ${formatProvenance(value.provenance)}`,
      md`Expected: ${ours(shape.words)}`,
      shape.allowed &&
        shape.quantity &&
        md`Allowed: ${formatBandWith(shape.allowed, shape.quantity, system)}`,
      requirement ? md`Needed from: ${prose(requirement)}` : undefined,
    ]),
    example(`${name}: ${fact.example}`),
  )
}

/** What a unit is, its size, and where that is from. */
export function unitMarkdown(unit: Unit): Markdown {
  const others = otherSpellings(unit)
  const base = unitsOf(unit.kind).find(({ si, offset }) => si === 1 && offset === 0)
  const size =
    unit.named || base === unit || !base
      ? undefined
      : prose(`1 ${unit.name} = ${formatNumber(unit.si + unit.offset, 8)} ${base.name}`)
  return paragraphs(
    md`**${plain(unit.name)}**: ${ours(unit.doc)}`,
    list([
      prose(`Unit of ${kinds[unit.kind].words.replace(/^an? /, '')}`),
      size,
      others.length > 0 ? md`Also written ${joined(others.map(code), ', ')}` : undefined,
      prose(`Source: ${unit.source}`),
    ]),
  )
}
