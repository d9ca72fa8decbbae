import { nearest } from '../quantity/nearest.ts'
import { once } from '../syntax/once.ts'
import type { BlockNode, FactNode, Item, LineNode, Span } from '../syntax/tree.ts'
import type { BlockKind, Fact } from '../vocabulary/block.ts'
import { findKind, vocabulary } from '../vocabulary/index.ts'
import { meant } from '../vocabulary/meant.ts'
import type { Draft } from './draft.ts'
import { evaluator } from './evaluate.ts'
import type { BindingProblem, Block, Place, Reference, Section } from './model.ts'
import type { BindingScope } from './scope.ts'

export interface Located<T> {
  readonly at: Place
  readonly problem: T
}

export interface Bound {
  readonly blocks: readonly Block[]
  readonly problems: readonly Located<BindingProblem>[]
  /** The words of its values that stand for something, in the order of the text. */
  readonly references: readonly Reference[]
}

const kindNames = Object.keys(vocabulary)

/** The kind of block meant by a word: `prop` for propeller. One or two letters are short for nothing in particular. */
const kindMeant = (word: string): string | undefined =>
  word.length > 2 ? meant(word, kindNames) : nearest(word, kindNames)

/** Gives meaning to one section: typed values, names, references, and what is wrong with them. Never throws. */
export function bind(section: Section, scope: BindingScope): Bound {
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
  const found = new Map<number, Reference>()
  const refer = (reference: Reference) => void found.set(reference.at.span.start, reference)
  const values = evaluator({ section, roots, scope, report, refer })
  for (const root of roots) settle(root, values.fact, values.inherit, report)
  const references = [...found.values()].sort((a, b) => a.at.span.start - b.at.span.start)
  return { blocks: roots, problems, references }
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
  const unread = definition ? unknownFacts(written, definition, report) : new Set<string>()
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
    section,
    node,
    definition,
    written,
    lines,
  }
  for (const item of node.items)
    if (item.type === 'block') block.children.push(draft(item, block, section, report))
  duplicates(block.children, section, report)
  return block
}

/** Reports the facts that the kind does not have. What each was meant to be is written and could not be read: it is not missing too. */
function unknownFacts(
  written: ReadonlyMap<string, FactNode>,
  { kind, facts, others }: BlockKind,
  report: Report,
): Set<string> {
  const unread = new Set<string>()
  const known = [...Object.keys(facts), 'like']
  for (const [
    name,
    {
      name: { span },
    },
  ] of written) {
    if (others || known.includes(name)) continue
    const near = nearest(name, known)
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

const twice = (block: Draft, first: Place): BindingProblem => ({
  type: 'duplicate',
  what: block.name && block.definition?.many ? block.name : `${block.kind} block`,
  first,
})

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
function elsewhere(roots: readonly Draft[], section: Section, scope: BindingScope, report: Report): void {
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

/** Works out every fact of the block and those inside, and says what is missing. */
function settle(
  block: Draft,
  value: (block: Draft, name: string) => unknown,
  inherit: (block: Draft) => void,
  report: Report,
): void {
  const { definition } = block
  if (definition) {
    for (const name of block.written.keys()) if (name !== 'like') value(block, name)
    if (definition.bare && block.lines.length > 0) value(block, definition.bare)
    else for (const line of block.lines) report(line.span, { type: 'line-not-understood' })
    inherit(block)
    // A part in a library may leave open what the job that uses it will say.
    const isPart = !block.parent && definition.within.some((kind) => kind !== 'top')
    if (!isPart) missing(block, definition, report)
  }
  for (const child of block.children) settle(child, value, inherit, report)
}

const requiredBy = once(({ facts }: BlockKind): readonly (readonly [name: string, fact: Fact])[] =>
  Object.entries(facts).filter(([, fact]) => fact.required),
)

function missing(block: Draft, definition: BlockKind, report: Report): void {
  for (const [name, { example }] of requiredBy(definition)) {
    if (!block.facts.has(name) && !block.unread.has(name))
      report(block.node.headSpan, { type: 'fact-missing', kind: definition.kind, name, example })
  }
  for (const kind of definition.needs ?? []) {
    const isMeant = (child: Draft) => !child.definition && kindMeant(child.kind) === kind
    if (!block.children.some((child) => child.kind === kind || isMeant(child)))
      report(block.node.headSpan, { type: 'block-missing', kind: definition.kind, name: kind })
  }
}
