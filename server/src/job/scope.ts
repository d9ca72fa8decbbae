import type { UnitSystem } from '../quantity/kinds.ts'
import type { Block, Section } from './model.ts'

/** What a section may ask about the rest of the job. Each answer is remembered with what was made from it (see `memo.ts`). */
export interface Scope {
  /** The top-level block of this name, in the file itself first, then in the files it uses. */
  named(name: string): Block | undefined
  /** The section that has it. */
  holder(name: string): Section | undefined
  /** Every top-level block of the kind in the file itself. */
  ofKind(kind: string): readonly Block[]
  /** The sections that have them. */
  holders(kind: string): readonly Section[]
  /** The section of the file itself that has the first top-level block of this name, or without a name of this kind. */
  first(name: string): Section | undefined
  /** Names of top-level blocks: for offering the nearest. */
  names(): readonly string[]
  /** The units the job wants its results shown in. */
  system(): UnitSystem
}

/** What a section may ask while it is given its meaning. */
export interface BindingScope extends Scope {
  /** Whether the top-level block of this name, or the only one of this kind, refers, by itself or through others, to the section that asks. Such a block is not given. */
  circular(name: string): boolean
  /** The kind of that block, which may be circular: who only names a block does not wait for it. */
  kindOf(name: string): string | undefined
}
