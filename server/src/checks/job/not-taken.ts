import { type Block, childrenOf, isTakenWhole, type NotTaken } from '../../job/model.ts'
import { elide } from '../../quantity/elide.ts'
import type { Part } from '../../syntax/tree.ts'
import { findKind, vocabulary } from '../../vocabulary/index.ts'
import { asks, type Status } from '../../vocabulary/status.ts'
import { problemCheck, type Severity, theLanguage } from '../check.ts'
import type { Edit } from '../fix.ts'
import { addBlock, addFact, blank } from '../fix-text.ts'
import { namesInLine, severityOfMissing } from '../missing.ts'

/** What the status asks for counts as anything else that is missing. */
const severityOf = (missing: readonly NotTaken[], status: Status | undefined): Severity => {
  if (!status || status === 'draft') return status ? 'information' : 'warning'
  return missing.some(({ from }) => asks(status, from)) ? severityOfMissing(status) : 'warning'
}

/** Names from a block down to a fact, or to a block that each drive has of its own. */
type Path = readonly string[]

/** Paths by their first name, in the order they come. */
function byFirst(paths: readonly Path[]): ReadonlyMap<string, readonly Path[]> {
  const found = new Map<string, Path[]>()
  for (const [first = '', ...rest] of paths) found.set(first, [...(found.get(first) ?? []), rest])
  return found
}

const childCalled = (block: Block, word: string): Block | undefined =>
  block.children.find(({ name, kind }) => (name ?? kind) === word)

const kindsInOrder = Object.keys(vocabulary)

/** A blank for each path: in the block where it is written, else in one that is written for it, in the order of the vocabulary. */
function blanksIn(block: Block, paths: readonly Path[]): readonly Edit[] {
  const placeOf = (first: string) => kindsInOrder.indexOf(childCalled(block, first)?.kind ?? first)
  const sorted = [...byFirst(paths)].toSorted(([a], [b]) => placeOf(a) - placeOf(b))
  return sorted.flatMap(([first, rest]): readonly Edit[] => {
    const child = childCalled(block, first)
    if (child && !isTakenWhole(child)) return blanksIn(child, rest)
    if (findKind(block.kind)?.facts[first]) return [addFact(block, first)]
    // Blocks of a drive are set apart.
    return [addBlock(block, `${block.kind === 'drive' ? '\n' : ''}${linesOf(block, first, rest)}`)]
  })
}

/** On one line where there is one thing in it. */
const blockText = (heading: string, inside: readonly string[]): string =>
  inside.length === 1 && !inside[0]?.includes('\n')
    ? `${heading} { ${inside[0]} }`
    : [`${heading} {`, ...inside.map((lines) => lines.replaceAll(/^(?=.)/gm, '  ')), '}'].join('\n')

/** A fact or a block as text, with a blank for all that is not taken. */
function linesOf(block: Block, first: string, rest: readonly Path[]): string {
  const child = childCalled(block, first)
  if (!child) return findKind(first) ? ownBlock(block, first) : `${first}: ${blank}`
  const inside = [...byFirst(rest)].map(([name, further]) => linesOf(child, name, further))
  return blockText(child.name === undefined ? child.kind : `${child.kind} ${child.name}`, inside)
}

/** A block that each drive has of its own, with blanks for what the other drive says there. */
function ownBlock({ source }: Block, kind: string): string {
  let from = source
  while (from && childrenOf(from, kind).length === 0) from = from.source
  const items = from ? (childrenOf(from, kind)[0]?.node.items ?? []) : []
  const lines = items.flatMap((item) => {
    if (item.type === 'fact') return [`${item.name.text}: ${blank}`]
    // `A to U, B to V` keeps its form.
    return item.type === 'line'
      ? [item.entries.map(({ parts }) => parts.map(blankOf).join(' ')).join(', ')]
      : []
  })
  return blockText(kind, lines)
}

const blankOf = (part: Part): string => (part.type === 'word' && part.text === 'to' ? part.text : blank)

export default problemCheck({
  id: 'job/not-taken',
  problem: 'not-taken',
  severity: 'warning',
  followsStatus: true,
  title: 'Fact that is not taken from another drive or part',
  why: 'The hand of the propeller, the phase map, the target and everything measured differ from drive to drive. A drive with `like` does not take them, nor does a part that is like one of another drive or of a library. Measure or decide them, and write them for each drive.',
  source: theLanguage,
  fires: `drive port { propeller { diameter: 420 mm  turns: left-hand } }
drive starboard { like: port }
#                       ^^^^ propeller.turns`,
  quiet: `drive port { propeller { diameter: 420 mm  turns: left-hand } }
drive starboard {
  like: port
  propeller { turns: right-hand }
}`,
  words: ({ from, missing, status }) => ({
    severity: severityOf(missing, status),
    message: namesInLine(
      `Not taken from ${elide(from)}: `,
      missing.map(({ path }) => path),
    ),
    todo: 'Write what is true of this drive: each drive has its own.',
    found: missing.map(({ path }) => path).join(', '),
    related: missing.map(({ path, at }) => ({ at, message: `${path} of ${from}` })),
    data: { paths: missing.map(({ path }) => path) },
  }),
  fixes: ({ data }, { block }) => {
    const paths = (data?.['paths'] as readonly string[] | undefined) ?? []
    if (!block || paths.length === 0) return []
    return [
      {
        title: paths.length === 1 ? `Add ${paths.join()}` : `Add the ${paths.length} that are not taken`,
        edits: blanksIn(
          block,
          paths.map((path) => path.split('.')),
        ),
        preferred: true,
        leaves: ['job/fact-missing'],
      },
    ]
  },
})
