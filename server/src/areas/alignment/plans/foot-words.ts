import {
  formatLength,
  formatShim,
  formatShims,
  formatUncertain,
  isFormattedAsZero,
} from '../../../quantity/format-measures.ts'
import type { UnitSystem } from '../../../quantity/kinds.ts'
import type { Uncertain } from '../../../quantity/uncertainty.ts'
import type { Correction } from './correction.ts'
import { belowUncertainty, type CorrectedFoot, type FootStep } from './steps.ts'
import { formatTurns } from './turn-words.ts'

export { formatTurns }

/** The size of a move, whichever way it goes. */
export const magnitude = (u: Uncertain): Uncertain => ({ ...u, value: Math.abs(u.value) })

/** `shims of 0.20 mm + 0.05 mm, together 0.25 mm`; the thickness alone where none is named. */
function formatShimStep(
  { pieces, thickness }: Extract<FootStep, { by: 'shims' }>,
  system: UnitSystem,
): string {
  const together = (pieces.length > 0 ? formatShim : formatLength)(thickness, system)
  if (pieces.length === 0) return together
  return pieces.length === 1
    ? `a shim of ${together}`
    : `shims of ${formatShims(pieces, system, ' + ')}, together ${together}`
}

/** `pack from 2.00 to 0.60 mm: shims of 0.50 + 0.10 mm`. */
function formatPack(
  { pieces, thickness, from = 0 }: Extract<FootStep, { by: 'shims' }>,
  system: UnitSystem,
): string {
  if (pieces.length === 0) return `take out all shims, the whole pack of ${formatShim(from, system)}`
  const each = pieces.length === 1 ? 'one shim' : `shims of ${formatShims(pieces, system, ' + ')}`
  return `pack from ${formatShims([from, thickness], system, ' to ')}: ${each}`
}

/** What to do at one foot to set its height. */
export function formatStep(foot: CorrectedFoot, c: Correction, system: UnitSystem): string {
  const { step } = foot
  if (c.withheld) return 'no step is given'
  if (step.by === 'nut') {
    const { move } = step
    if (move.direction === 'none')
      return step.touch ? 'run the lower nut until it just touches' : 'leave as it is'
    const turned = `turn the lower nut ${move.lowerNut}, seen from above`
    return step.touch
      ? `${move.direction} about ${formatTurns(move)}, until it just touches from below: ${turned}`
      : `${move.direction} ${formatTurns(move)}: ${turned}`
  }
  if (step.by === 'shims') {
    if (step.action === 'none') return 'leave as it is'
    if (step.action === 'make') return formatPack(step, system)
    const shims = formatShimStep(step, system)
    if (step.action === 'put in')
      return step.from === undefined
        ? `put in ${shims}`
        : `pack from ${formatShims([step.from, step.from + step.thickness], system, ' to ')}: put in ${shims}`
    return `take out ${shims}, or as near as the pack allows`
  }
  if (step.by === 'none') return 'leave as it is'
  const { value } = foot.vertical
  const by = formatLength(Math.abs(value), system)
  return isFormattedAsZero(value, system) ? 'leave as it is' : `${value > 0 ? 'raise' : 'lower'} ${by}`
}

/** What to say beside a move whose own uncertainty is larger than it is. */
const doubt = (move: Uncertain, c: Correction): string =>
  c.verdict !== 'within' && belowUncertainty(move) ? ' (U is larger than the move)' : ''

const across = (u: Uncertain, system: UnitSystem): string =>
  `${formatUncertain(magnitude(u), system)} to ${u.value > 0 ? 'starboard' : 'port'}`

/** What the foot is to go sideways, or would have to: by the whole correction, as far as its hole lets it, or not at all. */
export const formatSideways = (foot: CorrectedFoot, c: Correction, system: UnitSystem): string => {
  const { value } = foot.horizontal
  if (isFormattedAsZero(value, system)) return 'none'
  const whole = `${across(foot.horizontal, system)}${doubt(foot.horizontal, c)}`
  if (c.verdict === 'within' || c.withheld || foot.step.by === 'none' || Math.abs(foot.slid - value) < 1e-9)
    return whole
  if (foot.slid === 0) return `leave (full correction: ${across(foot.horizontal, system)})`
  return `${formatLength(Math.abs(foot.slid), system)} to ${foot.slid > 0 ? 'starboard' : 'port'}, as far as the holes allow (full correction: ${whole})`
}

export const formatHeight = (foot: CorrectedFoot, c: Correction, system: UnitSystem): string => {
  const { value } = foot.vertical
  return `${value < 0 ? 'down' : 'up'} ${formatUncertain(magnitude(foot.vertical), system)}${doubt(foot.vertical, c)}`
}
