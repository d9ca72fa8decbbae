import type { InPlanes } from '../../../engineering/alignment/planes.ts'

/** The two ways that a signed figure can point, plus first: a person reads a way, not a sign. */
const ways = {
  offset: { vertical: ['high', 'low'], horizontal: ['to starboard', 'to port'] },
  slope: { vertical: ['up', 'down'], horizontal: ['to starboard', 'to port'] },
  opening: {
    vertical: ['wider at the top than at the bottom', 'wider at the bottom than at the top'],
    horizontal: ['wider at starboard than at port', 'wider at port than at starboard'],
  },
} as const

type Pointing = keyof typeof ways

/** `low`, `to port`. */
export const wayOf = (what: Pointing, plane: keyof InPlanes<unknown>, value: number): string =>
  ways[what][plane][value < 0 ? 1 : 0]
