import type { FactNode, LineNode } from '../syntax/tree.ts'
import type { BlockKind } from '../vocabulary/block.ts'
import type { Block, Value } from './model.ts'

/** A block while it is being made: its facts are worked out when first asked for, so the order they are written in does not matter. */
export interface Draft extends Block {
  readonly children: Draft[]
  readonly parent: Draft | undefined
  readonly facts: Map<string, Value<unknown>>
  readonly others: Map<string, Value<unknown>>
  readonly unread: Set<string>
  readonly definition: BlockKind | undefined
  readonly written: ReadonlyMap<string, FactNode>
  readonly lines: readonly LineNode[]
}
