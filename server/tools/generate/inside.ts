import type { BlockKind } from '../../src/vocabulary/block.ts'
import { vocabulary } from '../../src/vocabulary/index.ts'

const set = (name: string, kinds: readonly BlockKind[]): string =>
  `export const ${name}: ReadonlySet<string> = new Set(${JSON.stringify(kinds.map(({ kind }) => kind))})\n`

/** Where blocks stand, as far as cutting a text needs to know: the floor that cuts lies below the vocabulary. */
export function inside(): string {
  const kinds = Object.values(vocabulary) as unknown as readonly BlockKind[]
  const never = kinds.filter(({ within }) => !within.includes('top'))
  const parts = kinds.filter(({ within }) => within[0] !== 'top' && within.includes('top'))
  return `// Made by npm run generate from the vocabulary.

/** Kinds of block that stand inside another, and never at the top. */
${set('alwaysInside', never)}
/** Kinds whose place is inside another: at the top they are parts to be shared, and have a name. */
${set('insideWithoutName', parts)}`
}
