import { type Block, isTakenWhole, type Place, type Section } from './model.ts'

/** Every block of these and inside them, outer before inner. */
export function* withInner(blocks: readonly Block[]): Generator<Block> {
  for (const block of blocks) {
    yield block
    yield* withInner(block.children)
  }
}

/** Finds which of some blocks a place is within (`isWithin`), in the order they are given in, without looking at each: they are sorted once. Of
 * several blocks with one path, what is taken is in the first. */
export function aroundIn(blocks: Iterable<Block>): (place: Place) => readonly Block[] {
  const order = new Map<Block, number>()
  const byPath = new Map<string, Block>()
  const bySection = new Map<Section, Block[]>()
  for (const block of blocks) {
    if (order.has(block)) continue
    order.set(block, order.size)
    if (!byPath.has(block.path)) byPath.set(block.path, block)
    if (isTakenWhole(block)) continue
    const written = bySection.get(block.section)
    if (written) written.push(block)
    else bySection.set(block.section, [block])
  }
  for (const written of bySection.values()) written.sort((a, b) => a.node.span.start - b.node.span.start)

  return (place) => {
    const found = new Set<Block>()
    if (place.taken)
      for (const path of pathsTo(place.taken.path)) {
        const block = byPath.get(path)
        if (block) found.add(block)
      }
    // Blocks are one in the other or apart: whichever holds the place is the last to begin before it, or around that one.
    let block = lastFrom(bySection.get(place.section) ?? [], place.span.start)
    for (; block; block = block.parent)
      if (order.has(block) && block.node.span.end >= place.span.end) found.add(block)
    return [...found].sort((a, b) => (order.get(a) ?? 0) - (order.get(b) ?? 0))
  }
}

/** `a`, `a.b`, `a.b.c` */
function pathsTo(path: string): readonly string[] {
  const paths: string[] = []
  for (let dot = path.indexOf('.'); dot >= 0; dot = path.indexOf('.', dot + 1)) paths.push(path.slice(0, dot))
  return [...paths, path]
}

/** The last of some blocks, in the order of the text, that begins at this offset or before it. */
function lastFrom(blocks: readonly Block[], offset: number): Block | undefined {
  let low = 0
  let high = blocks.length
  while (low < high) {
    const middle = (low + high) >> 1
    if ((blocks[middle]?.node.span.start ?? 0) <= offset) low = middle + 1
    else high = middle
  }
  return blocks[low - 1]
}
