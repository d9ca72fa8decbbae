import { memoizeByIdentity } from '../common/memoize-by-identity.ts'
import type { BlockNode, FactNode, Span } from '../syntax/tree.ts'
import { type BlockKind, factIn } from '../vocabulary/block.ts'
import { type Draft, type Layer, largestDrive, longestChain } from './draft.ts'
import {
  type BindingProblem,
  type Block,
  headingOf,
  isTakenWhole,
  type Mention,
  type Place,
  writtenBlock,
} from './model.ts'

/** How many blocks there are in one. */
const blocksInside = memoizeByIdentity((block: Draft): number =>
  block.children.reduce((sum, child) => sum + 1 + blocksInside(child), 0),
)

interface Taking {
  /** The block that any other is `like`, with the word that says so. What is wrong with it is reported where its facts are taken. */
  readonly partLike: (block: Draft) => { readonly source: Draft; readonly at: Place } | undefined
  /** The drive that this one is `like`, with the word that says so. What is wrong with it is reported. */
  readonly likeOf: (drive: Draft) => { readonly source: Draft; readonly at: Place } | undefined
  readonly report: (at: Place, problem: BindingProblem) => void
  readonly refer: (mention: Mention) => void
}

/** Gives each drive or part that is `like` another the blocks of that one: a block of its own takes what it does not say itself, any other is taken
 * whole. What a part takes comes before what its drive takes. */
export function takeOver(roots: readonly Draft[], { likeOf, partLike, report, refer }: Taking): void {
  const done = new Set<Draft>()
  /** Those that wait for what they are `like`: parts in a circle take nothing. */
  const open = new Set<Draft>()
  for (const root of roots) takeParts(root)
  const waiting = new Set(roots.filter(({ kind }) => kind === 'drive'))
  for (const root of roots) {
    // What a drive of the same section takes itself comes first.
    const chain = new Map<Draft, NonNullable<ReturnType<typeof likeOf>>>()
    for (let drive: Draft | undefined = root; drive && waiting.delete(drive); ) {
      const found = likeOf(drive)
      if (!found) break
      if (drive === found.source || chain.has(found.source)) {
        const { section, span } = found.at
        const path = section.text.slice(span.start, span.end)
        const round = { likeOf: drive.kind, isSelf: drive === found.source }
        report(found.at, { type: 'refers-to-itself', path, round })
        drive.likeUnknown = true
        break
      }
      chain.set(drive, found)
      drive = found.source
    }
    for (const [drive, { source, at }] of [...chain].reverse()) {
      if (source.layers.length >= longestChain) {
        report(at, { type: 'chain-too-long', path: source.name ?? source.kind })
        drive.likeUnknown = true
        unknownBut(drive, undefined)
        continue
      }
      const count = blocksInside(source)
      if (count > largestDrive) {
        report(at, { type: 'drive-too-large', path: source.name ?? source.kind, count, most: largestDrive })
        drive.likeUnknown = true
        unknownBut(drive, undefined)
        continue
      }
      if (source.likeUnknown) {
        const path = source.name ?? source.kind
        report(at, { type: 'source-unread', path, names: ['like'] })
        drive.likeUnknown = true
      }
      drive.source = source
      drive.layers = layersOf(source)
      takeChildren(drive, source, at)
    }
  }
  // A part of a drive may be `like` one that the drive has only now.
  for (const root of roots) takeParts(root)

  function takeParts(block: Draft): void {
    for (const child of block.children) takeParts(child)
    if (block.kind === 'drive' || !block.written.has('like') || done.has(block)) return
    const found = partLike(block)
    if (!found) return
    done.add(block)
    open.add(block)
    const { source, at } = found
    // Of one section, what that one takes itself comes first.
    if (source.section === block.section) takeParts(source)
    open.delete(block)
    if (open.has(source)) return
    const isDeep = source.children.some(({ layers }) => layers.length >= longestChain)
    if (source.children.length === 0 || isDeep || blocksInside(source) > largestDrive) return
    takeChildren(block, source, at)
  }

  function takeChildren(block: Draft, source: Draft, like: Place): void {
    const own = pairs(block, source)
    const taken: Draft[] = []
    for (const child of source.children) {
      if (!child.definition?.within.includes(block.kind)) continue
      if (child.definition.perDrive) {
        if (!child.definition.many) block.left.set(child.kind, headingOf(child))
        continue
      }
      const mine = own.get(child)
      if (mine) takeFrom(mine, child, like)
      taken.push(mine ?? takenWhole(child, block, like))
    }
    for (const [name, at] of source.left) if (!block.left.has(name)) block.left.set(name, at)
    const added = block.children.filter((child) => !taken.includes(child))
    for (const child of added) if (child.definition && !child.definition.perDrive) beside(child, taken)
    block.children = [...taken, ...added]
  }

  function takeFrom(block: Draft, source: Draft, like: Place): void {
    if (!comesFrom(source, block)) block.source ??= source
    block.layers = [...new Set([...block.layers, ...layersOf(source)])]
    if (block.name === undefined && source.name !== undefined) rename(block, source.name)
    else if (block.name !== undefined && block.name === source.name)
      refer({ at: headingOf(block), to: block })
    takeChildren(block, source, like)
  }

  function takenWhole(source: Draft, parent: Draft, like: Place): Draft {
    const { kind, name, title, about, definition } = source
    const path = `${parent.path}.${name ?? kind}`
    const written = writtenBlock(source)
    const block: Draft = {
      kind,
      name,
      title,
      about,
      path,
      parent,
      children: [],
      facts: new Map(),
      others: new Map(),
      unread: new Set(),
      blanks: new Set(),
      section: parent.section,
      node: standIn(source.node, like.span),
      head: {
        ...like,
        taken: { path, of: written.path, from: { section: written.section, span: written.node.headSpan } },
      },
      source,
      definition,
      written: new Map(),
      lines: [],
      layers: layersOf(source),
      likeUnknown: false,
      left: new Map(),
      likeSource: undefined,
    }
    takeChildren(block, source, like)
    return block
  }

  /** A block that goes with none of the other drive, while that one has blocks of its kind, may be meant for one of them. */
  function beside(block: Draft, taken: readonly Draft[]): void {
    const others = taken.filter(({ name }) => name !== undefined && name === block.name)
    const [same] = others
    if (same) {
      report(block.head, { type: 'duplicate', what: same.name ?? same.kind, first: headingOf(same) })
      return
    }
    const whole = taken.filter((other) => other.kind === block.kind && isTakenWhole(other))
    if (whole.length > 0 && block.definition)
      report(block.head, {
        type: 'block-added',
        kind: block.kind,
        name: block.name,
        taken: whole.map(({ name, kind }) => name ?? kind),
        isNamed: block.definition.heading === 'name',
      })
  }
}

/** Whether a block takes from another, directly or by way of others. */
function comesFrom(block: Draft, other: Draft): boolean {
  for (let next: Draft | undefined = block; next; next = next.source) if (next === other) return true
  return false
}

/** Which blocks are the same in both drives: of a kind those of one name; where a name may be left out, also the only ones that are left of it. */
function pairs(block: Draft, source: Draft): ReadonlyMap<Draft, Draft> {
  const found = new Map<Draft, Draft>()
  const left = block.children.filter(
    ({ definition }) => definition && !definition.perDrive && definition.within.includes(block.kind),
  )
  const pair = (own: Draft | undefined, other: Draft): void => {
    if (!own) return
    found.set(other, own)
    left.splice(left.indexOf(own), 1)
  }
  for (const other of source.children)
    pair(
      left.find(({ kind, name }) => kind === other.kind && name === other.name),
      other,
    )
  const rest = source.children.filter((other) => !found.has(other))
  for (const other of rest) {
    const own = left.filter(({ kind }) => kind === other.kind)
    const isOnly = own.length === 1 && rest.filter(({ kind }) => kind === other.kind).length === 1
    if (isOnly && other.definition?.heading === 'none') pair(own[0], other)
  }
  return found
}

function rename(block: Draft, name: string): void {
  block.name = name
  const repath = (of: Draft, path: string): void => {
    of.path = path
    for (const child of of.children) repath(child, `${path}.${child.name ?? child.kind}`)
  }
  repath(block, `${block.parent ? `${block.parent.path}.` : ''}${name}`)
}

/** The node of a block without text of its own, so that nothing that goes by nodes reads the text of another section. */
const standIn = (node: BlockNode, span: Span): BlockNode => ({
  ...node,
  kind: { ...node.kind, span },
  heading: node.heading.map((part) => ({ ...part, span })),
  items: [],
  span,
  headSpan: span,
})

const layersOf = (source: Draft): readonly Layer[] =>
  isTakenWhole(source) ? source.layers : [ownLayer(source), ...source.layers]

/** What the text of a block says for a drive that takes it. */
const ownLayer = memoizeByIdentity((of: Draft): Layer => {
  const written = new Map<string, FactNode>()
  const left = new Map<string, Place>()
  for (const [name, node] of of.written) {
    // What the other drive is `like` has been taken by it already.
    if (of.kind === 'drive' && name === 'like') continue
    const words = node.provenance?.words.map(({ text }) => text)
    if (mayBeTaken(of.definition, name, words, 'drive')) written.set(name, node)
    else left.set(name, { section: of.section, span: node.span })
  }
  return { of, written, left }
})

/** What the blocks that it is `like` say and a block does not take: by name, with where it is said. */
export function leftOut({ layers, left }: Draft): ReadonlyMap<string, Place> {
  if (layers.length === 0) return left
  const all = new Map(left)
  for (const layer of layers) for (const [name, at] of layer.left) if (!all.has(name)) all.set(name, at)
  return all
}

/** Where a block is that another is `like`: in the same drive, in another one, or at the top level of a file. */
export type TakenFrom = 'same-drive' | 'drive' | 'top'

export function takenFrom(block: Block, source: Block): TakenFrom {
  const [own, other] = [driveOf(block), driveOf(source)]
  if (!other) return 'top'
  return own === other ? 'same-drive' : 'drive'
}

function driveOf(block: Block): Block | undefined {
  let top = block
  while (top.parent) top = top.parent
  return top.kind === 'drive' ? top : undefined
}

/** Whether a fact may be taken by a block that is `like` another. Not from another drive: what was measured, and what each drive has of its own. A part
 * at the top level is a specification: all is taken but what was measured, and what is only found out when the part is fitted. */
export function mayBeTaken(
  kind: BlockKind | undefined,
  name: string,
  provenance: readonly string[] | undefined,
  from: TakenFrom,
): boolean {
  if (from === 'same-drive') return true
  const fact = kind && factIn(kind, name)
  const isOwn =
    from === 'drive' ? kind?.perDrive || fact?.perDrive : fact?.perDrive && fact.from === 'as-built'
  return !provenance?.includes('measured') && !isOwn
}

/** Where what a block takes is said: nearest first. */
export const layerOf = ({ layers }: Draft, name: string): Layer | undefined =>
  layers.find(({ written, left }) => written.has(name) || left.has(name))

/** Whether a fact is said before the `like` of a layer counts: by the block itself, or by the layers up to that one. */
export function statedAbove(block: Draft, layer: Layer | undefined): (name: string) => boolean {
  const above = layer ? block.layers.slice(0, block.layers.indexOf(layer) + 1) : []
  return (name) =>
    block.written.has(name) || above.some((each) => each.written.has(name) || each.left.has(name))
}

/** What a block is like is not known: nothing that it does not say itself is absent for sure. */
export function unknownBut(block: Draft, layer: Layer | undefined): void {
  const isStated = statedAbove(block, layer)
  for (const name of Object.keys(block.definition?.facts ?? {}))
    if (!isStated(name) && !block.facts.has(name)) block.unread.add(name)
}

/** Whether a fact will be said: a `?` stands for it, or the other drive says it and it is not taken. */
export const isPending = (block: Draft, name: string): boolean =>
  block.blanks.has(name) || (!block.unread.has(name) && leftOut(block).has(name))
