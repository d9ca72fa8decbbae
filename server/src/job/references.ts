import type { Leaf, Part } from '../syntax/tree.ts'
import type { BlockName, FactValue } from '../vocabulary/index.ts'
import type { Draft } from './draft.ts'
import { alongPath, furthestPath } from './look-for.ts'
import { namedBlock, nearBlock, referredBlock } from './lookup.ts'
import {
  type Block,
  blockNamed,
  childrenOf,
  type Mention,
  nameOf,
  ofName,
  placeOfPart,
  type Reference,
  type Section,
  type Value,
} from './model.ts'
import { blockAt } from './other.ts'
import { perSection } from './per-section.ts'
import type { Scope } from './scope.ts'

/** Every word of a section that stands for something, in the order of the text: those of its values, which binding has resolved, and the names
 * of readings, feet, terminals and whatever a concession is about, which are looked up where they stand; so are those of blocks that name each
 * other, which binding does not give. */
export const referencesOf = perSection(({ mentions, blocks }, scope): readonly Reference[] => {
  const all = [
    ...blocks.flatMap((block) => lookedUp(block, scope)),
    ...mentions.flatMap((mention) => meantBy(mention, scope)),
  ]
  const found = new Map(all.map((reference) => [reference.at.span.start, reference]))
  return [...found.values()].sort((a, b) => a.at.span.start - b.at.span.start)
})

/** What a word that binding has resolved stands for, as that is written now. */
function meantBy({ at, to: way, fact }: Mention, scope: Scope): readonly Reference[] {
  const to = 'inside' in way ? blockAt(way, scope) : way
  if (!to) return []
  if (fact === undefined) return [{ at, to, named: nameOf(to) }]
  const value = to.facts.get(fact)
  const node = value?.node ?? (to as Draft).written.get(fact)
  if (!node) return []
  const { section } = value?.origin ?? value?.at ?? to
  return [{ at, to, fact, named: { section, span: node.name.span } }]
}

/** The words of a path, and the blocks that they stand for. */
const along = (path: Leaf, blocks: readonly Block[], section: Section): readonly Reference[] =>
  alongPath(path, blocks, section).map(({ at, to }) => ({ at, to, named: nameOf(to) }))

function lookedUp(block: Block, scope: Scope): readonly Reference[] {
  const own =
    (Object.hasOwn(byKind, block.kind) ? byKind[block.kind as BlockName]?.(block, scope) : undefined) ?? []
  const named = [...block.facts].flatMap(([fact, { value, origin, at }]): readonly Reference[] => {
    const to = origin ? undefined : referredBlock(block, fact, scope)
    return to && typeof value === 'string'
      ? along({ text: value, span: at.span }, outwards(to, value), block.section)
      : []
  })
  return [...named, ...own, ...block.children.flatMap((child) => lookedUp(child, scope))]
}

const byKind: { readonly [K in BlockName]?: (block: Block, scope: Scope) => readonly Reference[] } = {
  move: (block, scope) => {
    const { about, parent, section } = block
    const readings = parent ? childrenOf(parent, 'reading') : []
    // A path leads from the drive down, so it is the drive's and the name.
    const after = about?.text.startsWith(`${parent?.path}.`)
      ? about.text.slice((parent?.path.length ?? 0) + 1)
      : undefined
    const before = about && (ofName(readings, about.text).at(-1) ?? (after && ofName(readings, after).at(-1)))
    const bed = nearBlock(block, 'bed', scope)
    const feet = [...block.others.values()].flatMap(({ node, name }): readonly Reference[] => {
      const to = bed && blockNamed(childrenOf(bed, 'foot'), name)
      return to ? [{ at: { section, span: node.name.span }, to, named: nameOf(to) }] : []
    })
    const path = about && { text: about.text, span: about.at.span }
    const named = path && before ? along(path, outwards(before, path.text), section) : []
    return [...named, ...feet]
  },
  reading: (block, scope) => {
    const lifts = block.facts.get('lifts')
    const bed = nearBlock(block, 'bed', scope)
    if (!bed || !lifts || lifts.origin) return []
    return lifts.node.entries.flatMap(({ parts: [part] }): readonly Reference[] => {
      const to = part?.type === 'word' ? blockNamed(childrenOf(bed, 'foot'), part.text) : undefined
      return to && part ? [{ at: { section: block.section, span: part.span }, to, named: nameOf(to) }] : []
    })
  },
  concession: (block, scope) => {
    const on = block.facts.get('on')
    if (!on || on.origin || typeof on.value !== 'string') return []
    const path = { text: on.value, span: on.at.span }
    const to = furthestPath(path.text, (part) => {
      const found = namedBlock(block, part, scope)
      return found && outwards(found, part)
    })
    return to ? along(path, to, block.section) : []
  },
  'phase-map': (block, scope) => {
    const pairs = block.facts.get('pairs')
    if (!pairs || pairs.origin) return []
    const sides = [nearBlock(block, 'controller', scope), nearBlock(block, 'motor', scope)] as const
    return pairs.node.entries.flatMap(({ parts: [from, , to] }) =>
      [from, to].flatMap((part, i) => terminal(part, sides[i], block.section)),
    )
  },
  cable: (block, scope) => {
    const ends = ['from', 'to'].map((end) => referredBlock(block, end, scope))
    const motor = ends.find((end) => end?.kind === 'motor') ?? nearBlock(block, 'motor', scope)
    return marksIn(block, 'phase-lengths', motor)
  },
  test: (block, scope) => {
    const on = referredBlock(block, 'on', scope)
    const motor = on?.kind === 'motor' ? on : undefined
    return [...marksIn(block, 'currents', motor), ...marksIn(block, 'resistances', motor)]
  },
}

/** The terminals of a motor that amounts are marked with: `U 1.80 m`, or two of them: `U-V 14.2 mohm`. */
function marksIn(block: Block, fact: string, motor: Block | undefined): readonly Reference[] {
  const value = block.facts.get(fact)
  if (!value || value.origin) return []
  return value.node.entries.flatMap(({ parts: [mark] }) => {
    if (mark?.type !== 'word' && mark?.type !== 'text') return []
    const itself = terminal(mark, motor, block.section)
    if (itself.length > 0) return itself
    const start = mark.span.start + (mark.type === 'text' ? 1 : 0)
    const of = (from: number, to: number) =>
      terminal(
        { ...mark, text: mark.text.slice(from, to), span: { start: start + from, end: start + to } },
        motor,
        block.section,
      )
    // A terminal may have a dash in its own name: both sides of the one between them are terminals.
    const both = [...mark.text.matchAll(/-/g)].map(({ index }) => [
      ...of(0, index),
      ...of(index + 1, mark.text.length),
    ])
    return both.find(({ length }) => length === 2) ?? []
  })
}

/** The block and those around it, as many as the path has segments. */
function outwards(last: Block, path: string): readonly Block[] {
  const blocks: Block[] = []
  for (
    let block: Block | undefined = last;
    block && blocks.length < path.split('.').length;
    block = block.parent
  )
    blocks.unshift(block)
  return blocks
}

function terminal(part: Part | undefined, device: Block | undefined, section: Section): Reference[] {
  const terminals = device?.facts.get('terminals')
  if (!device || !terminals || (part?.type !== 'word' && part?.type !== 'text')) return []
  const marks = terminals.value as FactValue<'motor.terminals'>
  const index = marks.findIndex(({ name }) => name === part.text)
  if (index < 0) return []
  const named = placeOfPart(terminals as Value<typeof marks>, index)
  return [{ at: { section, span: part.span }, to: device, fact: 'terminals', word: part.text, named }]
}
