import type { Block } from '../../job/model.ts'

/** Every block, outer before inner. */
export const withInner = (blocks: readonly Block[]): readonly Block[] =>
  blocks.flatMap((block) => [block, ...withInner(block.children)])
