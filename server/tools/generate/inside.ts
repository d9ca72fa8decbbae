import type { BlockKind } from '../../src/vocabulary/block.ts'
import { blockKinds } from '../../src/vocabulary/index.ts'

const set = (name: string, kinds: readonly BlockKind[]): string =>
  `export const ${name}: ReadonlySet<string> = new Set(${JSON.stringify(kinds.map(({ kind }) => kind))})\n`

/** Where blocks stand, as far as cutting a text needs to know: the floor that cuts lies below the vocabulary. */
export function inside(): string {
  const never = blockKinds.filter(({ within }) => !within.includes('top'))
  const parts = blockKinds.filter(({ within }) => within[0] !== 'top' && within.includes('top'))
  return `// Made by npm run generate from the vocabulary.

/** Every kind of block. */
${set('kindsOfBlock', blockKinds)}
/** Kinds of block that stand inside another, and never at the top. */
${set('alwaysInside', never)}
/** Kinds whose place is inside another: at the top they are parts to be shared, and have a name. */
${set('insideWithoutName', parts)}`
}
