import { memoizeByIdentity } from '../common/memoize-by-identity.ts'
import type { Block } from '../job/model.ts'
import type { BlockId } from './block-id.ts'
import { StoredBlock } from './stored-block.ts'

const under = (block: Block): readonly Block[] => [block, ...block.children.flatMap(under)]

/** Blocks as they are bound, which are in no store, go by their place in the tree. */
const boundUnder = memoizeByIdentity((root: Block) => {
  const blocks = under(root)
  return { blocks, ids: new Map(blocks.map((block, i) => [block, String(i) as BlockId])) }
})

function rootOf(block: Block): Block {
  let root = block
  while (root.parent) root = root.parent
  return root
}

/** What stands for a block in a result. */
export function idOf(block: Block): BlockId {
  const id = block instanceof StoredBlock ? block.key : boundUnder(rootOf(block)).ids.get(block)
  if (id === undefined) throw new Error(`The block ${block.path} is not one of the job.`)
  return id
}

/** The block that a result about another one in the same drive names. */
export function blockNear(near: Block, id: BlockId): Block {
  const block =
    near instanceof StoredBlock ? near.top.blocks.get(id)?.byId : boundUnder(rootOf(near)).blocks[Number(id)]
  if (!block) throw new Error(`There is no block ${id} with ${near.path}.`)
  return block
}
