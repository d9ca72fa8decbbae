// An input, and what is done with it.

/** What is done with a text: see actions.ts. */
export type Action = 'check' | 'plan' | 'edit' | 'type' | 'offer'

export const usualActions: readonly Action[] = ['check', 'edit']

/** Of what is kept from one keystroke to the next. */
export const typed: readonly Action[] = [...usualActions, 'type']

/** Of what a plan follows from. */
export const planned: readonly Action[] = [...typed, 'plan']

export interface Input {
  /** A text with so many of it. */
  readonly text: (count: number) => string
  /** The least number that is counted; twice and four times as many are counted beside it. */
  readonly from: number
  /** What is done with it, where that is not the usual. */
  readonly by?: readonly Action[]
}
