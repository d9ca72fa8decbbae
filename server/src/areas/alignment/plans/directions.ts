import type { InPlanes } from '../../../engineering/alignment/planes.ts'

/** The two ways that a signed figure can point, plus first: a person reads a way, not a sign. */
const directions = {
  offset: { vertical: ['high', 'low'], horizontal: ['to starboard', 'to port'] },
  slope: { vertical: ['up', 'down'], horizontal: ['to starboard', 'to port'] },
  opening: {
    vertical: ['wider at the top than at the bottom', 'wider at the bottom than at the top'],
    horizontal: ['wider at starboard than at port', 'wider at port than at starboard'],
  },
} as const

type DirectedFigure = keyof typeof directions

/** `low`, `to port`. */
export const directionOf = (what: DirectedFigure, plane: keyof InPlanes<unknown>, value: number): string =>
  directions[what][plane][value < 0 ? 1 : 0]
