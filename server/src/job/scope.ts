import type { UnitSystem } from '../quantity/kinds.ts'
import type { Status } from '../vocabulary/status.ts'
import type { Block, Section } from './model.ts'

/** What a section may ask about the rest of the job. Each answer is remembered with what was made from it (see `memo.ts`). */
export interface Scope {
  /** The top-level block of this name, in the file itself first, then in the files it uses. */
  named(name: string): Block | undefined
  /** The only one of the kind in the file itself; undefined where there are several. */
  only(kind: string): Block | undefined
  /** The only one of the kind that the file itself has outside a section. */
  another(kind: string, outside: Section): Block | undefined
  /** The section of the file itself that has the first top-level block of this name, or without a name of this kind. */
  first(name: string): Section | undefined
  /** The kind of the top-level block of this name, or of the only one of this kind: who only names a block does not wait for it. */
  kindOf(name: string): string | undefined
  /** Whether the top-level block of this name, or the only one of this kind, refers back to the section that asks, by itself or through others.
   * Such a block is not given while a section is given its meaning. */
  circular(name: string): boolean
  /** Names of top-level blocks: for offering the nearest. */
  names(): readonly string[]
  /** The units the job wants its results shown in. */
  system(): UnitSystem
  /** How far the job has got; undefined in a file without a job: a library of parts. */
  status(): Status | undefined
  /** Whether another block of the file takes over the top-level block of this name. */
  isTaken(name: string): boolean
}
