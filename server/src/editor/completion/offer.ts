import type { Markdown } from '../../areas/common/markdown.ts'
import type { Finding } from '../../checks/check.ts'
import type { Block, Section } from '../../job/model.ts'
import type { View } from '../../job/per-section.ts'
import type { Scope } from '../../job/scope.ts'
import type { CursorContext, Frame } from './cursor-context.ts'
import { plainOf, type Template } from './template.ts'

/** Something that may be written at the cursor. */
export interface Offer {
  readonly label: string
  readonly kind: 'fact' | 'block' | 'word' | 'unit' | 'name' | 'check' | 'file' | 'date' | 'snippet'
  readonly detail?: string
  readonly doc?: Markdown
  /** Whether a part of it may be a whole value, which is not offered itself: no longer offered once more is typed. */
  readonly holdsWhole?: boolean
  readonly insert: Template
}

export const word = (label: string, more: Partial<Offer> = {}): Offer => ({
  label,
  kind: 'word',
  insert: [label],
  ...more,
})

/** What an offer is for a client that has no places to fill in: its text; of a fact its name alone, for the value is still to come. */
export const withoutPlaces = ({ kind, insert }: Offer): string =>
  kind === 'fact' ? plainOf(insert.slice(0, 1)) : plainOf(insert)

export interface CompletionRequest extends View {
  /** `YYYY-MM-DD` */
  readonly today: string
  /** Job files that the file may use, by their paths from its root. */
  readonly paths: () => readonly string[]
  /** What is found in the file as it stands now. */
  readonly findings: () => readonly Finding[]
}

/** The cursor's surroundings. */
export interface CompletionContext extends CompletionRequest {
  readonly section: Section
  readonly context: CursorContext
  /** The innermost block around the cursor: as its tokens show it, and what it means. */
  readonly frame: Frame | undefined
  readonly block: Block | undefined
  readonly scope: Scope
}
