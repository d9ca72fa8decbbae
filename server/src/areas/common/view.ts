import type { Finding } from '../../checks/check.ts'
import type { JobFile } from '../../job/files.ts'
import type { Lookup } from '../../store/lookup.ts'
import type { BlockName } from '../../vocabulary/index.ts'
import type { Markdown } from './markdown.ts'

/** What is known of the file around what is shown. */
export interface Ground {
  readonly file: JobFile
  readonly findings: () => readonly Finding[]
}

/** A row of a table of parts: what, and how it stands. */
export type Row = readonly [what: Markdown, words: Markdown]

/** A few words behind the heading of a block, or behind one of its values. */
export interface BlockHint {
  /** The setting that turns it off: `shaftwright.inlayHints.NAME`. */
  readonly setting: 'cables' | 'moves' | 'results'
  /** Offset in the section. */
  readonly at: number
  readonly words: string
  /** Where it comes from. */
  readonly tooltip: string
}

/** What is shown of the blocks of a kind. Each is asked from where the block stands. */
export interface View {
  readonly on: BlockName
  /** For a hover over its heading. Where there is none, the table of its figures is shown. */
  readonly hover?: (lookup: Lookup, ground: Ground) => Markdown | undefined
  /** Its rows in the hover of its drive. */
  readonly inDrive?: (lookup: Lookup) => readonly Row[]
  /** What stands over it, each in a line of its own that leads to the plan. */
  readonly lenses?: (lookup: Lookup) => readonly string[]
  readonly hints?: (lookup: Lookup) => readonly BlockHint[]
}
