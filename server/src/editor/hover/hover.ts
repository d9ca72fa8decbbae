import { code, joined, list, type Markdown, md, ours, paragraphs } from '../../areas/common/markdown.ts'
import { allChecks } from '../../areas/index.ts'
import type { Finding } from '../../checks/check.ts'
import type { JobFile } from '../../job/files.ts'
import { namedBlock } from '../../job/lookup.ts'
import { type Block, blockOf, type Place, type Section, type Value } from '../../job/model.ts'
import type { View } from '../../job/per-section.ts'
import type { Scope } from '../../job/scope.ts'
import { findUnit } from '../../quantity/units.ts'
import type { FactNode, LineNode, Part, Provenance, Span } from '../../syntax/tree.ts'
import { type Fact, factIn } from '../../vocabulary/block.ts'
import { provenanceWords } from '../../vocabulary/form.ts'
import { findKind } from '../../vocabulary/index.ts'
import { nodeAt } from '../navigation/node-at.ts'
import { computedMarkdown } from './computed.ts'
import { headingWords, partOfValue } from './part.ts'
import { checksMarkdown, sourcesMarkdown } from './sources.ts'
import { blockMarkdown, checkMarkdown, factMarkdown, kindMarkdown, unitMarkdown } from './words.ts'

export interface Hover {
  readonly markdown: Markdown
  readonly place: Place
}

export interface HoverView extends View {
  /** Where the pages of the checks stand, ending in `/`, when they stand anywhere. */
  readonly docs?: string | undefined
  /** What is found in the text as it stands now. */
  readonly findings?: () => readonly Finding[]
}

interface Around {
  readonly view: View
  readonly scope: Scope
  readonly docs: string | undefined
  readonly findings: () => readonly Finding[]
}

/** What there is to say about the place in the text; undefined where there is nothing. */
export function hover(
  { analysis, file, docs, findings = () => [] }: HoverView,
  section: Section,
  offset: number,
): Hover | undefined {
  const at = nodeAt(section.parsed.tree, offset)
  if (!at) return undefined
  const around = { view: { analysis, file }, scope: analysis.scope(file), docs, findings }
  const node = at.blocks.at(-1)
  const block = node && blockOf(analysis.bound(file, section).blocks, node)
  const hovered = (span: Span, markdown: Markdown | undefined): Hover | undefined =>
    markdown === undefined || markdown === '' ? undefined : { markdown, place: { section, span } }
  switch (at.on) {
    case 'kind':
      return hovered(at.block.kind.span, block && headMarkdown(block, around, 'kind'))
    case 'heading':
      return hovered(
        at.part.span,
        block && (headingWords(block, at.part) ?? headMarkdown(block, around, 'name')),
      )
    case 'fact':
      return hovered(at.fact.name.span, block && ofFact(block, at.fact, around))
    case 'unit': {
      const unit = findUnit(at.unit.text)
      return hovered(at.unit.span, unit ? unitMarkdown(unit) : block && ofFact(block, at.item, around))
    }
    case 'part':
      return hovered(
        at.part.span,
        block ? partMarkdown(block, at.part, at.item, around) : used(at.item, file),
      )
    case 'provenance':
      return hovered(at.provenance.span, provenanceMarkdown(at.provenance))
  }
}

function provenanceMarkdown({ words }: Provenance): Markdown {
  const known = words.flatMap(({ text }) => (Object.hasOwn(provenanceWords, text) ? [text] : []))
  return paragraphs(
    md`**Where the value comes from**. A block that is ${code('like')} this one takes it with the value.`,
    list(
      (known.length > 0 ? known : Object.keys(provenanceWords)).map(
        (word) => md`${code(word)}: ${ours(provenanceWords[word] ?? '')}`,
      ),
    ),
  )
}

function headMarkdown(block: Block, around: Around, on: 'kind' | 'name'): Markdown | undefined {
  const kind = findKind(block.kind)
  if (!kind) return undefined
  const about = on === 'name' && block.about && namedBlock(block, block.about.text, around.scope)
  if (about) return headMarkdown(about, around, 'name')
  const check =
    on === 'name' && kind.heading === 'check' && allChecks.find(({ id }) => id === block.about?.text)
  if (check)
    return paragraphs(
      checkMarkdown(check, around.docs),
      md`---`,
      blockMarkdown(block, kind, around.scope.system()),
    )
  const words = on === 'kind' ? kindMarkdown(kind) : blockMarkdown(block, kind, around.scope.system())
  const computed = computedMarkdown(block, around.view, around.findings)
  const sources = sourcesMarkdown(block.kind, around.docs)
  return computed ? paragraphs(computed, sources, md`---`, words) : paragraphs(words, sources)
}

interface Declared {
  readonly name: string
  readonly fact: Fact
}

function declared(block: Block, item: FactNode | LineNode): Declared | undefined {
  const kind = findKind(block.kind)
  const name = item.type === 'fact' ? item.name.text : kind?.bare
  const fact = name !== undefined && kind ? factIn(kind, name) : undefined
  return name !== undefined && fact ? { name, fact } : undefined
}

const like = ours(
  '**like**\n\nThe block that this one inherits from. Facts not stated here are taken from there. Facts stated here take precedence.',
)

const likeDrive = paragraphs(
  ...[
    '**like**',
    'The drive that this one inherits from, block by block and fact by fact. What is stated here takes precedence.',
    'Not inherited: readings, moves, the target, the phase map, the hand of the propeller, anything `[measured]`, and whatever belongs to one machine. Write those for each drive.',
    'Names in inherited blocks refer to the blocks of this drive first.',
  ].map((words) => ours(words)),
)

function ofFact(block: Block, item: FactNode | LineNode, around: Around): Markdown | undefined {
  if (item.type === 'fact' && item.name.text === 'like') return block.kind === 'drive' ? likeDrive : like
  const found = declared(block, item)
  if (!found) return undefined
  const value = block.facts.get(found.name) ?? block.others.get(found.name)
  return paragraphs(
    factMarkdown({
      ...found,
      kind: block.kind,
      value,
      replaced: replacedBy(value, block, found.name),
      system: around.scope.system(),
    }),
    checksMarkdown(`${block.kind}.${found.name}`, around.docs),
  )
}

/** `?` in a value. */
const blank = ours(
  '**Not known yet**\n\nA `?` marks a number, a word or a text that is still to be filled in. Until then the fact counts as missing, and nothing is calculated from it.',
)

/** What the other drive says, where a drive that is `like` it says its own. */
function replacedBy(value: Value<unknown> | undefined, { source }: Block, name: string) {
  const other = value?.origin ? undefined : source?.facts.get(name)
  return source && other && { value: other, of: other.at.taken?.of ?? source.path }
}

function partMarkdown(
  block: Block,
  part: Part,
  item: FactNode | LineNode,
  around: Around,
): Markdown | undefined {
  if (part.type === 'word') {
    const referred = referredMarkdown(block, part.text, item, around)
    if (referred !== undefined) return referred
  }
  if (part.type === 'blank') return paragraphs(blank, ofFact(block, item, around))
  const found = declared(block, item)
  const value = found && (block.facts.get(found.name) ?? block.others.get(found.name))
  return paragraphs(partOfValue(part, item, found?.fact.shape, value), ofFact(block, item, around))
}

/** The block, or the fact of another block, that a word in a value stands for. */
function referredMarkdown(
  block: Block,
  path: string,
  item: FactNode | LineNode,
  around: Around,
): Markdown | undefined {
  const isLike = item.type === 'fact' && item.name.text === 'like'
  const shape = declared(block, item)?.fact.shape
  const mayRefer = isLike || shape?.refersTo || shape?.quantity || block.kind === 'concession'
  if (!mayRefer || shape?.choices?.includes(path)) return undefined
  const target = namedBlock(block, path, around.scope)
  if (target) return headMarkdown(target, around, 'name')
  const dot = path.lastIndexOf('.')
  const holder = dot < 0 ? block : namedBlock(block, path.slice(0, dot), around.scope)
  const name = path.slice(dot + 1)
  for (let b = holder; b; b = dot < 0 ? b.parent : undefined) {
    const value = b.facts.get(name)
    const fact = findKind(b.kind)?.facts[name]
    if (value && fact) return factMarkdown({ kind: b.path, name, fact, value, system: around.scope.system() })
  }
  return undefined
}

function used(item: FactNode | LineNode, file: JobFile): Markdown | undefined {
  const [word] = item.entries[0]?.parts ?? []
  if (word?.type !== 'word' || word.text !== 'use') return undefined
  const from = file.used.map(({ path }) => code(path))
  return paragraphs(
    md`**use**`,
    md`Uses blocks of another job file by their names: a library of parts. The path is relative to this file and must stay inside the workspace folder.`,
    from.length === 0 ? undefined : md`Used here: ${joined(from, ', ')}`,
  )
}
