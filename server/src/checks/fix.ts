import type { Place } from '../job/model.ts'

/** New text for a place. `blank` in it is where the person writes on: a fix never makes up a figure. */
export interface Edit {
  readonly at: Place
  readonly newText: string
}

/** A change of the text that answers a finding. */
export interface Fix {
  /** What it does, in the words of the trade: `Use 95 mm²`. */
  readonly title: string
  readonly edits: readonly Edit[]
  /** Means the same whoever reads it: may be done unasked when the file is saved. */
  readonly safe?: true
  /** The one most likely meant. */
  readonly preferred?: true
  /** Ids of the checks that have something to say afterwards: about what is still to be written, or to be done at the machine. */
  readonly leaves?: readonly string[]
  /** It makes something readable, which is checked from then on: checks of the install may find more. */
  readonly uncovers?: true
}
