import type { Check } from '../../checks/check.ts'
import type { Figure } from './figure.ts'
import type { View } from './view.ts'

/** What the faces know of an area, and all they know of it. */
export interface Area {
  /** The name of its folder. */
  readonly name: string
  /** What it is about, as a heading. */
  readonly title: string
  /** The page that explains how its results are worked out, from `docs/`. */
  readonly page: string
  readonly checks: readonly Check[]
  readonly figures: readonly Figure[]
  readonly views: readonly View[]
}
