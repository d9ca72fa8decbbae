import { nearest } from '../quantity/nearest.ts'
import type { BlockNode, FactNode, Item, LineNode, Span } from '../syntax/tree.ts'
import { type BlockKind, needsOf } from '../vocabulary/block.ts'
import { findKind, kindMeant } from '../vocabulary/index.ts'
import type { Status } from '../vocabulary/status.ts'
import type { Draft } from './draft.ts'
import { evaluator } from './evaluate.ts'
import type { BindingProblem, Block, Mention, NotTaken, Place, Section } from './model.ts'
import type { Outside } from './other.ts'
import { partLikeIn } from './part-like.ts'
import { leftOut, takeOver } from './take-over.ts'

export interface Located<T> {
  readonly at: Place
  readonly problem: T
}

export interface Bound {
  readonly blocks: readonly Block[]
  readonly problems: readonly Located<BindingProblem>[]
  /** The words of its values that stand for something. Of those that begin at one place, the last counts. */
  readonly mentions: readonly Mention[]
}

/** Gives meaning to one section: typed values, names, references, and what is wrong with them. Never throws. */
export function bind(section: Section, scope: Outside): Bound {
  const problems: Located<BindingProblem>[] = []
  const report = (span: Span, problem: BindingProblem): void => {
    problems.push({ at: { section, span }, problem })
  }
  const roots: Draft[] = []
  for (const item of section.parsed.tree.items) {
    if (item.type === 'block') roots.push(draft(item, undefined, section, report))
    else if (!isUse(item)) report(item.span, { type: 'line-not-understood' })
  }
  duplicates(roots, section, report)
  elsewhere(roots, section, scope, report)
  const mentions: Mention[] = []
  const refer = (mention: Mention) => void mentions.push(mention)
  const tell = (at: Place, problem: BindingProblem) => void problems.push({ at, problem })
  const values = evaluator({ section, roots, scope, report: tell, refer })
  takeOver(roots, {
    likeOf: values.driveLike,
    partLike: partLikeIn({ section, roots, scope }),
    report: tell,
    refer,
  })
  for (const root of roots) settle(root, values, report)
  for (const root of roots) askForRest(root, scope, tell)
  return { blocks: roots, problems, mentions }
}

/** `use "path"` at the top level; which file it is, is not decided here. */
export const isUse = (item: Item): item is LineNode => {
  const [first, second] = item.type === 'line' ? (item.entries[0]?.parts ?? []) : []
  return first?.type === 'word' && first.text === 'use' && second?.type === 'text'
}

type Report = (span: Span, problem: BindingProblem) => void

function draft(node: BlockNode, parent: Draft | undefined, section: Section, report: Report): Draft {
  const definition = findKind(node.kind.text)
  const heading = readHeading(node, definition, section, report)
  if (!definition) {
    const near = kindMeant(node.kind.text)
    report(node.kind.span, { type: 'unknown-block', kind: node.kind.text, ...(near && { nearest: near }) })
  } else if (!definition.within.includes(parent?.kind ?? 'top') && (!parent || parent.definition)) {
    report(node.kind.span, { type: 'misplaced-block', kind: definition.kind, within: definition.within })
  }
  const written = new Map<string, FactNode>()
  const lines: LineNode[] = []
  for (const item of node.items) {
    if (item.type === 'line') lines.push(item)
    if (item.type !== 'fact') continue
    const first = written.get(item.name.text)
    if (!first) written.set(item.name.text, item)
    else
      report(item.name.span, {
        type: 'duplicate',
        what: item.name.text,
        first: { section, span: first.name.span },
      })
  }
  const unread = definition ? unknownFacts(written, definition, section, report) : new Set<string>()
  const own = heading.name ?? definition?.kind ?? node.kind.text
  const block: Draft = {
    kind: node.kind.text,
    name: heading.name,
    title: heading.title,
    about: heading.about,
    path: parent && parent.path !== '' ? `${parent.path}.${own}` : own,
    parent,
    children: [],
    facts: new Map(),
    others: new Map(),
    unread,
    blanks: new Set(),
    section,
    node,
    head: { section, span: node.headSpan },
    source: undefined,
    definition,
    written,
    lines,
    layers: [],
    likeUnknown: false,
    left: new Map(),
    likeSource: undefined,
  }
  for (const item of node.items)
    if (item.type === 'block') block.children.push(draft(item, block, section, report))
  duplicates(block.children, section, report)
  return block
}

/** Reports the facts that the kind does not have. What each was meant to be is written and could not be read: it is not missing too. */
function unknownFacts(
  written: ReadonlyMap<string, FactNode>,
  { kind, facts, others, rewritten = {} }: BlockKind,
  { text }: Section,
  report: Report,
): Set<string> {
  const unread = new Set<string>()
  const known = [...Object.keys(facts), 'like']
  for (const [
    name,
    {
      name: { span },
      entries,
      valueSpan,
    },
  ] of written) {
    if (known.includes(name)) continue
    if (Object.hasOwn(rewritten, name)) {
      const now = rewritten[name]?.(text.slice(valueSpan.start, valueSpan.end).trim()) ?? ''
      report(span, { type: 'unknown-fact', name, kind, now })
      const [meant = ''] = /^[a-z-]+/.exec(now) ?? []
      for (const fact of [name, meant]) if (!written.has(meant)) unread.add(fact)
      continue
    }
    const near = nearest(name, known)
    // Where the names are the user's own, a date or a text shows that a fact was meant.
    const [first] = entries[0]?.parts ?? []
    const isMeant = near !== undefined && (first?.type === 'date' || first?.type === 'text')
    if (others && !isMeant) continue
    report(span, { type: 'unknown-fact', name, kind, ...(near && { nearest: near }) })
    unread.add(name)
    const meant = near === 'like' ? known : [near ?? name]
    for (const fact of meant) if (!written.has(fact)) unread.add(fact)
  }
  return unread
}

const aName = 'a name, which begins with a letter and has no spaces'

function readHeading(
  node: BlockNode,
  definition: BlockKind | undefined,
  section: Section,
  report: Report,
): Partial<Pick<Block, 'name' | 'title' | 'about'>> {
  const [first, second, third] = node.heading
  const wrong = (expected: string) => {
    report(node.headSpan, { type: 'heading', kind: node.kind.text, expected })
    return {}
  }
  const about = (part: typeof first) =>
    part && 'text' in part ? { about: { text: part.text, at: { section, span: part.span } } } : {}
  switch (definition?.heading) {
    case 'title':
      return first?.type === 'text' && !second
        ? { title: first.text }
        : !first
          ? {}
          : wrong('a title in quotes')
    case 'after':
      return first?.type === 'word' && first.text === 'after' && second?.type === 'word' && !third
        ? about(second)
        : wrong('`after` and the name of a reading')
    case 'check':
      return first?.type === 'word' && !second ? about(first) : wrong('the id of a check')
    case 'name':
      return first?.type === 'word' && !second ? { name: first.text } : wrong(aName)
    default:
      if (!first) return {}
      if (first.type === 'word' && !second) return { name: first.text }
      return definition ? wrong(`${aName}, or nothing`) : {}
  }
}

/** What may stand only once among its neighbours; undefined where any number may, or where it is told already that the name is not there. */
function keyOf(block: Draft): string | undefined {
  const { definition, kind, name, node, parent } = block
  if (!definition || kind === 'move' || kind === 'concession') return undefined
  if (!definition.many && parent) return kind
  const unread = definition.heading === 'name' || (definition.heading === 'none' && node.heading.length > 0)
  return name ?? (unread ? undefined : kind)
}

const twice = ({ name, kind, definition }: Draft, first: Place): BindingProblem =>
  name !== undefined && definition?.many
    ? { type: 'duplicate', what: name, first }
    : { type: 'duplicate', what: kind, first, isKind: true }

function duplicates(blocks: readonly Draft[], section: Section, report: Report): void {
  const seen = new Map<string, Draft>()
  for (const block of blocks) {
    const key = keyOf(block)
    if (key === undefined) continue
    const first = seen.get(key)
    if (first) report(block.node.headSpan, twice(block, { section, span: first.node.headSpan }))
    else seen.set(key, block)
  }
}

/** Top-level blocks whose name an earlier section of the file has already. */
function elsewhere(roots: readonly Draft[], section: Section, scope: Outside, report: Report): void {
  for (const block of roots) {
    const key = keyOf(block)
    const other = key === undefined ? undefined : scope.first(key)
    if (!other || other === section) continue
    const first = other.parsed.tree.items.find(
      (item) => item.type === 'block' && (headingWord(item) ?? item.kind.text) === key,
    )
    if (first?.type === 'block')
      report(block.node.headSpan, twice(block, { section: other, span: first.headSpan }))
  }
}

export const headingWord = ({ heading: [first] }: BlockNode): string | undefined =>
  first?.type === 'word' ? first.text : undefined

/** Works out every fact of the block and those inside. */
function settle(block: Draft, values: ReturnType<typeof evaluator>, report: Report): void {
  const { definition } = block
  if (definition) {
    for (const name of block.written.keys()) if (name !== 'like') values.fact(block, name)
    if (definition.bare && block.lines.length > 0) values.fact(block, definition.bare)
    else for (const line of block.lines) report(line.span, { type: 'line-not-understood' })
    values.inherit(block)
    values.take(block)
  }
  for (const child of block.children) settle(child, values, report)
}

/** From which status on a fact or a block of this name is asked for. */
const askedFrom = ({ definition }: Draft, name: string): Status | undefined =>
  definition && (definition.facts[name]?.from ?? needsOf(definition).find(({ kind }) => kind === name)?.from)

/** Asks a block for what it does not take from the one it is `like`: a drive with all its blocks, any other for itself. */
function askForRest(block: Draft, scope: Outside, tell: (at: Place, problem: BindingProblem) => void): void {
  const like = block.written.get('like')
  const other = block.kind === 'drive' ? block.source : block.likeSource
  if (like && other) {
    const missing = notTaken(block, '')
    const from = block.kind === 'drive' ? (other.name ?? other.kind) : other.path
    const at = { section: block.section, span: like.valueSpan }
    if (missing.length > 0) tell(at, { type: 'not-taken', from, missing, status: scope.status() })
  }
  for (const child of block.children) askForRest(child, scope, tell)
}

/** What a block and those that it takes blocks for do not take and do not say; not what a block with a `like` of its own is asked for there. */
function notTaken(block: Draft, path: string): readonly NotTaken[] {
  const own = [...leftOut(block)].flatMap(([name, at]): readonly NotTaken[] => {
    const isSaid = block.facts.has(name) || block.unread.has(name)
    if (isSaid || block.children.some(({ kind }) => kind === name)) return []
    return [{ path: `${path}${name}`, from: askedFrom(block, name), at }]
  })
  const inside = block.children.flatMap((child) =>
    child.source && !child.likeSource ? notTaken(child, `${path}${child.name ?? child.kind}.`) : [],
  )
  return [...own, ...inside]
}
