import type { Target } from '../../../engineering/alignment/feet.ts'
import { formatSlope } from '../../../quantity/format-measures.ts'
import type { Uncertain } from '../../../quantity/uncertainty.ts'
import type { Correction } from './correction.ts'

/** How lengths are written in this plan. */
export interface Lengths {
  readonly length: (si: number) => string
  readonly sure: (u: Uncertain) => string
}

const leastShown = 1e-9

/** `machine flange 0.08 mm high, far end 0.30 mrad high`; `nothing` where all is zero. */
function formatTarget({ vertical, horizontal }: Target, { length }: Lengths): string {
  const flange = [
    Math.abs(vertical.offset) > leastShown &&
      `${length(Math.abs(vertical.offset))} ${vertical.offset < 0 ? 'low' : 'high'}`,
    Math.abs(horizontal.offset) > leastShown &&
      `${length(Math.abs(horizontal.offset))} to ${horizontal.offset < 0 ? 'port' : 'starboard'}`,
  ].filter(Boolean)
  const far = [
    Math.abs(vertical.slope) > leastShown &&
      `${formatSlope(Math.abs(vertical.slope))} ${vertical.slope < 0 ? 'low' : 'high'}`,
    Math.abs(horizontal.slope) > leastShown &&
      `${formatSlope(Math.abs(horizontal.slope))} to ${horizontal.slope < 0 ? 'port' : 'starboard'}`,
  ].filter(Boolean)
  const parts = [
    flange.length > 0 && `machine flange ${flange.join(' and ')}`,
    far.length > 0 && `far end ${far.join(' and ')}`,
  ].filter(Boolean)
  return parts.length > 0 ? parts.join(', ') : 'nothing'
}

/** The target with its parts, where one is given. The verdict is held against it, not against zero. */
const targetLines = ({ target }: Correction, lengths: Lengths): readonly string[] =>
  target
    ? [
        `Target for this reading: ${formatTarget(target.target, lengths)}; gap variation and offset are judged from there`,
        ...target.parts.map((part) => `Part of the target: ${formatTarget(part, lengths)} (${part.words})`),
      ]
    : []

/** What turned with the flange. */
const runOutLines = ({ runOut }: Correction, { sure }: Lengths): readonly string[] => [
  ...(runOut?.face ? [`Face run-out ${sure(runOut.face)} as the flange turns, averaged out`] : []),
  ...(runOut?.rim ? [`Rim run-out ${sure(runOut.rim)} as the flange turns, averaged out`] : []),
]

/** What the reading is held against, and what was taken out of it. */
export const asReadLines = (c: Correction, lengths: Lengths): readonly string[] => [
  ...targetLines(c, lengths),
  ...runOutLines(c, lengths),
]
