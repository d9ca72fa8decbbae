import type { UnitSystem } from '../quantity/kinds.ts'
import type { Block } from './model.ts'

/** What a section may ask about the rest of the job. Each answer is remembered with what was made from it (see `memo.ts`). */
export interface Scope {
  /** The top-level block of this name, in the file itself first, then in the files it uses. */
  named(name: string): Block | undefined
  /** Every top-level block of the kind in the file itself. */
  ofKind(kind: string): readonly Block[]
  /** Names of top-level blocks, with commas: for offering the nearest. */
  names(): string
  /** The units the job wants its results shown in. */
  system(): UnitSystem
}
