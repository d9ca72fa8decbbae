import type { Check } from '../../checks/check.ts'

/** What the faces know of an area. */
export interface Area {
  /** The name of its folder. */
  readonly name: string
  readonly checks: readonly Check[]
}
