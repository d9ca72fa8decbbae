import { type Block, isTakenWhole } from '../job/model.ts'
import { type BlockId, between } from './block-id.ts'
import { equal } from './equal.ts'
import { type Content, StoredBlock, type Top } from './stored-block.ts'
import { StoredValue } from './stored-value.ts'

/** Takes in a top-level block as it is bound now. What says the same as before stays the same object. */
export function takeIn(
  top: Top,
  root: Block,
  text: unknown,
  remember: (block: Block, as: StoredBlock) => void,
): void {
  top.text.version = text
  const left = new Map(top.blocks)
  let isSame = true

  const visit = (block: Block, parent: StoredBlock | undefined): StoredBlock => {
    const key = parent
      ? freeId(
          `${parent.key}${between}${block.kind} ${block.name ?? ''}`,
          (id) => top.blocks.has(id) && !left.has(id),
        )
      : top.id
    let stored = left.get(key)
    if (stored) left.delete(key)
    else {
      stored = new StoredBlock(top, key, block, parent)
      top.blocks.set(key, stored)
    }
    remember(block, stored)
    const children = block.children.map((child) => visit(child, stored))
    const before = stored.content
    const now = contentOf(block, children, stored, before)
    isSame &&= before !== undefined && haveEqualContent(before, now)
    stored.content = now
    return stored
  }

  top.root = visit(root, undefined)
  for (const [key, gone] of left) {
    gone.content = undefined
    top.blocks.delete(key)
    isSame = false
  }
  if (!isSame) top.version = {}
}

/** Doubles are numbered in the order of the text. */
export function freeId(path: string, isTaken: (id: BlockId) => boolean): BlockId {
  let free = path as BlockId
  for (let n = 2; isTaken(free); n++) free = `${path}~${n}` as BlockId
  return free
}

function contentOf(
  block: Block,
  children: readonly StoredBlock[],
  of: StoredBlock,
  before: Content | undefined,
): Content {
  const { title, about, likeUnknown, left } = block
  return {
    block,
    facts: factsOf('facts', block, of, before),
    others: factsOf('others', block, of, before),
    unread: sameOr(before?.unread, block.unread),
    blanks: sameOr(before?.blanks, block.blanks),
    children: sameOr(before?.children, children),
    title,
    about: about?.text,
    likeUnknown,
    isTakenWhole: isTakenWhole(block),
    left: sameOr(before?.left, new Set(left.keys())),
  }
}

const sameOr = <T>(before: T | undefined, now: T): T =>
  before !== undefined && equal(before, now) ? before : now

const haveEqualContent = (a: Content, b: Content): boolean =>
  a.facts === b.facts &&
  a.others === b.others &&
  a.unread === b.unread &&
  a.blanks === b.blanks &&
  a.children === b.children &&
  a.title === b.title &&
  a.about === b.about &&
  a.likeUnknown === b.likeUnknown &&
  a.isTakenWhole === b.isTakenWhole &&
  a.left === b.left

function factsOf(
  kind: 'facts' | 'others',
  block: Block,
  of: StoredBlock,
  before: Content | undefined,
): Content['facts'] {
  const known = before?.[kind]
  const facts = new Map<string, StoredValue>()
  let isSame = known?.size === block[kind].size
  const names = known?.keys()
  for (const [name, value] of block[kind]) {
    const old = known?.get(name)
    const now = old?.says(value) ? old : new StoredValue(value, () => of.bound[kind].get(name))
    isSame &&= now === old && names?.next().value === name
    facts.set(name, now)
  }
  return isSame && known ? known : facts
}
