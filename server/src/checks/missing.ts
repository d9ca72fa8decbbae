import { type Block, childrenOf, isTakenWhole, writtenBlock } from '../job/model.ts'
import type { Lookup } from '../store/lookup.ts'
import { type BlockKind, type Fact, isAskedWith, needsOf } from '../vocabulary/block.ts'
import { type BlockName, findKind, kindMeant } from '../vocabulary/index.ts'
import { asks, type Status } from '../vocabulary/status.ts'
import type { Severity } from './check.ts'

/** The checks that say what is missing. */
export const missingChecks: readonly string[] = [
  'job/fact-missing',
  'job/fact-assumed',
  'job/block-missing',
  'job/not-taken',
]

/** How much it counts that something is missing. Only this follows the status of the job: a verdict and a danger never do. */
const severities: Readonly<Record<Status, Severity>> = {
  draft: 'information',
  'for-review': 'warning',
  issued: 'error',
  'as-built': 'error',
}

/** In a library of parts nothing is asked for; what is written there with a `?` is still shown. */
export const severityOfMissing = (status: Status | undefined): Severity =>
  status === undefined ? 'information' : severities[status]

/** Whether what a block, or one around it, is like cannot be found: all that it does not say may be said there. */
export const isLikeUnknown = (block: Block): boolean =>
  block.likeUnknown || (block.parent !== undefined && isLikeUnknown(block.parent))

/** Whether the block is asked for what its kind needs. Not in a library, nor a part of the file that others take over. */
export const isRequired = ({ block, status, isTaken }: Lookup, kind: BlockKind): boolean =>
  status !== undefined &&
  !isLikeUnknown(block) &&
  (block.parent !== undefined || kind.within[0] === 'top' || !isTaken)

/** Whether a fact makes sense in the block as it is. */
const applies = ({ facts, unread }: Block, fact: Fact): boolean =>
  isAskedWith(fact, (name) => facts.get(name)?.value ?? (unread.has(name) ? name : undefined)) &&
  (fact.or === undefined || !facts.has(fact.or))

const isInDrive = ({ kind, parent }: Block): boolean =>
  kind === 'drive' || (parent !== undefined && isInDrive(parent))

/** The blocks that this one is `like`, nearest first. */
function sourcesOf({ source }: Block): readonly Block[] {
  const sources: Block[] = []
  for (let next = source; next; next = next.source) sources.push(next)
  return sources
}

/** A text without a letter or a digit says no more than no text. */
export const isSilent = (value: unknown): boolean =>
  value === undefined || (typeof value === 'string' && !/[\p{L}\p{N}]/u.test(value))

/** What is missing in a fact that is stated: from `issued` on it is asked for whole. */
function missingIn(block: Block, name: string, fact: Fact, required: Status): readonly string[] {
  const value = block.facts.get(name)?.value
  const part = value === undefined || !asks(required, 'issued') ? undefined : fact.lacks?.(value)
  return part === undefined ? [] : [`${part} of ${name}`]
}

/** Names of the facts of a block that the status asks for and that are not known, in the order of the vocabulary. */
export function missingFacts(lookup: Lookup): readonly string[] {
  const { block, status } = lookup
  const kind = findKind(block.kind)
  // What the other drive does not say either is said there. Of a part in a library nothing is asked there.
  if (!kind || (isTakenWhole(block) && isInDrive(writtenBlock(block)))) return []
  const required = isRequired(lookup, kind) ? status : undefined
  const { facts, blanks, unread, left } = block
  const sources = sourcesOf(block)
  const known = Object.entries(kind.facts).flatMap(([name, fact]) => {
    if (blanks.has(name)) return [name]
    // What the one that it is `like` says, and it does not take, `job/not-taken` asks for.
    const isLeft = () => left.has(name) || sources.some((source) => source.facts.has(name))
    const isOpen = isSilent(facts.get(name)?.value) && !unread.has(name) && !isLeft()
    if (isOpen) return required && asks(required, fact.from) && applies(block, fact) ? [name] : []
    return required ? missingIn(block, name, fact, required) : []
  })
  return [...known, ...[...blanks].filter((name) => !Object.hasOwn(kind.facts, name))]
}

/** Kinds of block that the status asks for beside or inside this one, and that are not there. */
export function missingBlocks(lookup: Lookup): readonly string[] {
  const { block, status } = lookup
  const kind = findKind(block.kind)
  if (!kind || !status || isTakenWhole(block) || !isRequired(lookup, kind)) return []
  const { left } = block
  const sources = sourcesOf(block)
  const isLeft = (name: string) =>
    left.has(name) || sources.some((source) => childrenOf(source, name).length > 0)
  const isThere = (name: string) => hasKind(lookup, name as BlockName)
  const open = needsOf(kind).filter(
    ({ kind: needed, from, beside = [] }) =>
      asks(status, from) && !isThere(needed) && !isLeft(needed) && beside.every(isThere),
  )
  return [...new Set(open.map(({ kind: needed }) => needed))]
}

function hasKind(lookup: Lookup, kind: BlockName): boolean {
  const { block, ofKind } = lookup
  const isThere = (within: Block) =>
    childrenOf(within, kind).length > 0 ||
    within.children.some((child) => !findKind(child.kind) && kindMeant(child.kind) === kind)
  // What a job needs may stand in any of its drives.
  if (block.kind === 'job') return ofKind(kind).length > 0 || ofKind('drive').some(isThere)
  return isThere(block) || lookup.near(kind) !== undefined
}

const numbers = [
  'No',
  'One',
  'Two',
  'Three',
  'Four',
  'Five',
  'Six',
  'Seven',
  'Eight',
  'Nine',
  'Ten',
  'Eleven',
  'Twelve',
]

const longestLine = 100

/** `Six facts are still missing: …`, with as many names as fit in one line. */
export function formatMissing(what: 'fact' | 'block', names: readonly string[]): string {
  const count = numbers[names.length] ?? String(names.length)
  return namesInLine(`${count} ${what}${names.length === 1 ? ' is' : 's are'} still missing: `, names)
}

/** As many whole names as fit in one line, and how many more there are. */
export function namesInLine(start: string, names: readonly string[]): string {
  const line = (shown: number): string => {
    const left = names.length - shown
    return `${start}${names.slice(0, shown).join(', ')}${left > 0 ? ` and ${left} more` : ''}.`
  }
  let shown = Math.min(names.length, longestLine) // no more fit, however short
  while (shown > 1 && line(shown).length > longestLine) shown -= 1
  return line(shown)
}

/** Why it counts as much as it does. */
export function whyRequired(status: Status | undefined): string {
  switch (status) {
    case 'issued':
      return 'The job is issued: the yard builds from it.'
    case 'as-built':
      return 'The job is as-built: it records the finished install.'
    case 'for-review':
      return 'The review needs this.'
    default:
      return 'Nothing is assumed instead.'
  }
}
