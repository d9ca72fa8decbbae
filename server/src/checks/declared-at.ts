import type { Block, Place } from '../job/model.ts'
import { type Fact, factIn } from '../vocabulary/block.ts'
import { findKind } from '../vocabulary/index.ts'
import { factAt } from './fix-text.ts'

/** What the vocabulary says of the fact at a place. */
export function declaredAt(block: Block | undefined, at: Place): Fact | undefined {
  const kind = block && findKind(block.kind)
  const name = factAt(block, at)?.name.text ?? kind?.bare
  return kind && name !== undefined ? factIn(kind, name) : undefined
}
