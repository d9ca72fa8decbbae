import { allChecks } from '../checks/index.ts'
import type { Analysis } from '../job/analysis.ts'
import type { JobFile } from '../job/files.ts'
import { lookupFrom } from '../job/lookup.ts'
import type { Block, Place, Section } from '../job/model.ts'
import type { Scope } from '../job/scope.ts'
import { formatSi } from '../quantity/format.ts'
import { readQuantity } from '../quantity/quantity.ts'
import { findUnit } from '../quantity/units.ts'
import type { BlockNode, FactNode, LineNode, Part, Span } from '../syntax/tree.ts'
import type { Fact } from '../vocabulary/block.ts'
import { findKind } from '../vocabulary/index.ts'
import { computedMarkdown } from './hover-computed.ts'
import { blockMarkdown, checkMarkdown, factMarkdown, kindMarkdown, unitMarkdown } from './hover-words.ts'
import { code, paragraphs } from './markdown.ts'
import { nodeAt } from './node-at.ts'

export interface Hover {
  readonly markdown: string
  readonly place: Place
}

export interface View {
  readonly analysis: Analysis
  readonly file: JobFile
}

/** What there is to say about the place in the text; undefined where there is nothing. */
export function hover({ analysis, file }: View, section: Section, offset: number): Hover | undefined {
  const at = nodeAt(section.parsed.tree, offset)
  if (!at) return undefined
  const scope = analysis.scope(file)
  const node = at.blocks.at(-1)
  const block = node && blockOf(analysis.bound(file, section).blocks, node)
  const hovered = (span: Span, markdown: string | undefined): Hover | undefined =>
    markdown === undefined || markdown === '' ? undefined : { markdown, place: { section, span } }
  switch (at.on) {
    case 'kind':
      return hovered(at.block.kind.span, block && headMarkdown(block, scope, 'kind'))
    case 'heading':
      return hovered(at.part.span, block && headMarkdown(block, scope, 'name'))
    case 'fact':
      return hovered(at.fact.name.span, block && ofFact(block, at.fact, scope))
    case 'unit': {
      const unit = findUnit(at.unit.text)
      return hovered(at.unit.span, unit ? unitMarkdown(unit) : block && ofFact(block, at.item, scope))
    }
    case 'part':
      return hovered(at.part.span, block ? partMarkdown(block, at.part, at.item, scope) : used(at.item, file))
    case 'provenance':
      return hovered(
        at.provenance.span,
        '**Where the value comes from**, as the writer says: the maker, a drawing, a measurement, or an assumption. It goes with the value wherever that is used.',
      )
  }
}

function blockOf(blocks: readonly Block[], node: BlockNode): Block | undefined {
  for (const block of blocks) {
    const found = block.node === node ? block : blockOf(block.children, node)
    if (found) return found
  }
  return undefined
}

function headMarkdown(block: Block, scope: Scope, on: 'kind' | 'name'): string | undefined {
  const kind = findKind(block.kind)
  if (!kind) return undefined
  const about = on === 'name' && block.about && lookupFrom(block, scope).named(block.about.text)
  if (about) return headMarkdown(about, scope, 'name')
  const check =
    on === 'name' && kind.heading === 'check' && allChecks.find(({ id }) => id === block.about?.text)
  if (check) return paragraphs(checkMarkdown(check), '---', blockMarkdown(block, kind, scope.system()))
  const words = on === 'kind' ? kindMarkdown(kind) : blockMarkdown(block, kind, scope.system())
  const computed = computedMarkdown(block, scope)
  return computed ? `${computed}\n\n---\n\n${words}` : words
}

interface Declared {
  readonly name: string
  readonly fact: Fact
}

function declared(block: Block, item: FactNode | LineNode): Declared | undefined {
  const kind = findKind(block.kind)
  const name = item.type === 'fact' ? item.name.text : kind?.bare
  const fact = name !== undefined && kind && Object.hasOwn(kind.facts, name) ? kind.facts[name] : kind?.others
  return name !== undefined && fact ? { name, fact } : undefined
}

const like =
  '**like**\n\nThe block this one takes over: what is not said here is as it is there. Facts written here come first.'

function ofFact(block: Block, item: FactNode | LineNode, scope: Scope): string | undefined {
  if (item.type === 'fact' && item.name.text === 'like') return like
  const found = declared(block, item)
  if (!found) return undefined
  const value = block.facts.get(found.name) ?? block.others.get(found.name)
  return factMarkdown({ ...found, kind: block.kind, value, system: scope.system() })
}

function partMarkdown(block: Block, part: Part, item: FactNode | LineNode, scope: Scope): string | undefined {
  if (part.type === 'word') {
    const referred = referredMarkdown(block, part.text, item, scope)
    if (referred !== undefined) return referred
  }
  return paragraphs(amountMarkdown(part), ofFact(block, item, scope))
}

/** An amount in the other units it would be shown in. */
function amountMarkdown(part: Part): string | undefined {
  if (part.type !== 'amount' || !part.unit) return undefined
  const read = readQuantity(part.number, part.unit.text)
  if (!read.ok || !read.value.kind) return undefined
  const { si, kind, unit } = read.value
  const shown = new Set((['metric', 'inch'] as const).map((system) => formatSi(si, kind, system)))
  const others = [...shown].filter((words) => unit === undefined || !words.endsWith(` ${unit.name}`))
  return others.length === 0
    ? undefined
    : `${code(`${part.number} ${part.unit.text}`)} is ${others.join(', ')}`
}

/** The block, or the fact of another block, that a word in a value stands for. */
function referredMarkdown(
  block: Block,
  path: string,
  item: FactNode | LineNode,
  scope: Scope,
): string | undefined {
  const isLike = item.type === 'fact' && item.name.text === 'like'
  const shape = declared(block, item)?.fact.shape
  const mayRefer = isLike || shape?.refersTo || shape?.quantity || block.kind === 'concession'
  if (!mayRefer || shape?.choices?.includes(path)) return undefined
  const lookup = lookupFrom(block, scope)
  const target = lookup.named(path)
  if (target) return headMarkdown(target, scope, 'name')
  const dot = path.lastIndexOf('.')
  const holder = dot < 0 ? block : lookup.named(path.slice(0, dot))
  const name = path.slice(dot + 1)
  for (let b = holder; b; b = dot < 0 ? b.parent : undefined) {
    const value = b.facts.get(name)
    const fact = findKind(b.kind)?.facts[name]
    if (value && fact) return factMarkdown({ kind: b.path, name, fact, value, system: scope.system() })
  }
  return undefined
}

function used(item: FactNode | LineNode, file: JobFile): string | undefined {
  const [word] = item.entries[0]?.parts ?? []
  if (word?.type !== 'word' || word.text !== 'use') return undefined
  const from = file.used.map(({ path }) => code(path)).join(', ')
  return paragraphs(
    '**use**',
    'Blocks of another job file, by their names: a library of parts. It has to lie in the same folder tree.',
    from === '' ? undefined : `Used here: ${from}`,
  )
}
