import type { Shape } from './shape.ts'

export interface Fact<T = unknown> {
  readonly shape: Shape<T>
  /** What it is, for hover and the reference. */
  readonly doc: string
  /** A value as it would be written. */
  readonly example: string
  /** Without it the block says too little; not asked of parts in a library. */
  readonly required: boolean
}

export const fact = <T>(
  shape: Shape<T>,
  doc: string,
  more: { example: string; required?: true },
): Fact<T> => ({
  shape,
  doc,
  example: more.example,
  required: more.required ?? false,
})

/** What stands between a block's kind and its brace. */
export type Heading = 'none' | 'name' | 'title' | 'after' | 'check'

export interface BlockKind<Facts extends Readonly<Record<string, Fact>> = Readonly<Record<string, Fact>>> {
  readonly kind: string
  readonly doc: string
  /** `none` still allows a name, so that a library can hold several. */
  readonly heading: Heading
  /** Kinds it may stand in; `top` is the file itself. */
  readonly within: readonly string[]
  /** Whether several may stand side by side. */
  readonly many: boolean
  readonly facts: Facts
  /** Fact that lines without a colon are read as. */
  readonly bare?: keyof Facts & string
  /** What a fact by any other name is: the names are then the user's own. */
  readonly others?: Fact
  /** Children that must be there. */
  readonly needs?: readonly string[]
  readonly example: string
}

/** What the kind says of a fact by that name, the user's own names included. */
export const factIn = ({ facts, others }: BlockKind, name: string): Fact | undefined =>
  Object.hasOwn(facts, name) ? facts[name] : others

/** Keeps the names of the facts in the type, so that a path to a fact that is not there does not compile. */
export const block = <const Facts extends Readonly<Record<string, Fact>>>(
  kind: BlockKind<Facts>,
): BlockKind<Facts> => kind
