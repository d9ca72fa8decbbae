import type { FactNode, LineNode } from '../syntax/tree.ts'
import type { BlockKind } from '../vocabulary/block.ts'
import type { Block, Place, Value } from './model.ts'

/** More values or drives than this, each taken from the next, are not followed: nobody means them. */
export const longestChain = 32

/** A drive with more blocks than this is not taken over: drives times blocks would grow with the square of the text. */
export const largestDrive = 200

/** A block while it is being made: its facts are worked out when first asked for, so the order they are written in does not matter. */
export interface Draft extends Block {
  name: string | undefined
  path: string
  children: Draft[]
  source: Draft | undefined
  readonly parent: Draft | undefined
  readonly facts: Map<string, Value<unknown>>
  readonly others: Map<string, Value<unknown>>
  readonly unread: Set<string>
  readonly blanks: Set<string>
  readonly definition: BlockKind | undefined
  readonly written: ReadonlyMap<string, FactNode>
  readonly lines: readonly LineNode[]
  /** What it takes where its drive is `like` another: what the block there says, then what that one takes itself. */
  layers: readonly Layer[]
  likeUnknown: boolean
  readonly left: Map<string, Place>
  /** What its own `like` leads to, once that was followed. */
  likeSource: Block | undefined
}

/** What a block says for those that take from it. Its values are worked out again where they are taken. */
export interface Layer {
  readonly of: Draft
  readonly written: ReadonlyMap<string, FactNode>
  /** What it says that is not taken, and where. */
  readonly left: ReadonlyMap<string, Place>
}

/** A value that is being worked out: of a fact, or of the block that another is `like`. */
export interface Running {
  readonly block: Draft
  readonly node: FactNode | undefined
  /** A value that is assumed goes into it. */
  assumes?: true
}
