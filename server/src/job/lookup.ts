import { getOrInsert } from '../common/get-or-insert.ts'
import { memoizeByIdentity } from '../common/memoize-by-identity.ts'
import type { Band } from '../quantity/band.ts'
import { formatBand, formatBoth } from '../quantity/format.ts'
import type { Kind, UnitSystem } from '../quantity/kinds.ts'
import { type BlockName, findKind } from '../vocabulary/index.ts'
import type { Status } from '../vocabulary/status.ts'
import { lookFor } from './look-for.ts'
import { type Block, ofKind } from './model.ts'
import type { Scope } from './scope.ts'

/** The only one of the kind; none when there are several to choose from. */
function only(blocks: readonly Block[], kind: string): Block | undefined {
  const all = ofKind(blocks, kind)
  return all.length === 1 ? all[0] : undefined
}

function nearBlock(block: Block, kind: BlockName, scope: Scope): Block | undefined {
  for (let b: Block | undefined = block; b; b = b.parent) {
    if (b.kind === kind) return b
    const inside = only(b.children, kind)
    if (inside) return inside
  }
  const named = block.kind === 'drive' || block.parent ? referenced(block, kind, scope) : undefined
  return named ?? scope.only(kind)
}

/** A drive says by name which shared block it uses: `battery: house`. */
function referenced(block: Block, kind: string, scope: Scope): Block | undefined {
  for (let b: Block | undefined = block; b; b = b.parent) {
    const name = b.facts.get(kind)?.value
    if (typeof name === 'string') return scope.named(name)
  }
  return undefined
}

function namedBlock(
  block: Block,
  path: string,
  scope: Scope,
  kinds: readonly string[] | undefined,
): Block | undefined {
  const found = lookFor(path, { roots: [], scope, from: block.parent, kinds, not: undefined })
  return found?.at(-1)
}

/** The block that a fact of this one names: of the kinds that the fact is about, since a name may be that of several. */
function referredBlock(block: Block, fact: string, scope: Scope): Block | undefined {
  const name = block.facts.get(fact)?.value
  const kinds = findKind(block.kind)?.facts[fact]?.shape.refersTo
  return typeof name === 'string' && kinds ? namedBlock(block, name, scope, kinds) : undefined
}

/** What can be asked from where a block stands. */
export interface BoundLookup {
  readonly block: Block
  /** The block of the kind that goes with this one: itself, one around it, the only one beside it or in the drive, the only one in the file. */
  readonly near: (kind: BlockName) => Block | undefined
  /** The block a name stands for, looked for from this block outwards. */
  readonly named: (path: string) => Block | undefined
  /** The block that a reference of this one stands for: `referred('protects')`. */
  readonly referred: (fact: string) => Block | undefined
  /** Every block of the kind that stands at the top of the file. */
  readonly ofKind: (kind: BlockName) => readonly Block[]
  /** The same questions asked from another block. */
  readonly from: (other: Block) => BoundLookup
  readonly system: UnitSystem
  /** How far the job has got; undefined in a library of parts. */
  readonly status: Status | undefined
  /** Whether this block is a part at the top of the file that others take over. */
  readonly isTaken: boolean
  /** A result in the job's own units with the other in brackets. */
  readonly show: (si: number, kind: Kind) => string
  readonly showBand: (band: Band, kind: Kind) => string
}

const lookups = memoizeByIdentity((_: Scope) => new Map<Block, BoundLookup>())

/** What can be asked from this block: the same one whenever the same scope is asked, so that results can be kept with it. */
export const boundLookup = (block: Block, scope: Scope): BoundLookup =>
  getOrInsert(lookups(scope), block, () => newLookup(block, scope))

function newLookup(block: Block, scope: Scope): BoundLookup {
  const nearest = new Map<BlockName, Block | undefined>()
  const references = new Map<string, Block | undefined>()
  return {
    block,
    near: (kind) => getOrInsert(nearest, kind, () => nearBlock(block, kind, scope)),
    named: (path) => namedBlock(block, path, scope, undefined),
    referred: (fact) => getOrInsert(references, fact, () => referredBlock(block, fact, scope)),
    ofKind: (kind) => scope.ofKind(kind),
    from: (other) => boundLookup(other, scope),
    get system() {
      return scope.system()
    },
    get status() {
      return scope.status()
    },
    get isTaken() {
      return !block.parent && block.name !== undefined && scope.isTaken(block.name)
    },
    show: (si, kind) => formatBoth(si, kind, scope.system()),
    showBand: (band, kind) => formatBand(band, kind, scope.system()),
  }
}
