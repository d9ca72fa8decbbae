import type { UnitSystem } from '../quantity/kinds.ts'
import { saidLength, saidLimit, saidShim } from '../quantity/said.ts'
import type { Doubt } from './alignment-doubts.ts'
import { type SoftFound, softLimit } from './alignment-lifts.ts'
import { sayTurns } from './turn-words.ts'

const unnamed = {
  'too-few-lifts': 'From fewer than three lifts it cannot be said what to do.',
  alike:
    'All feet rise alike: the bed springs, or the machine stands on a bowed frame, and no shim helps. Look at the bed and its fastening.',
  'moved-since': 'A foot was moved since, so what is left to do is not known.',
  'none-stands-out':
    'No foot rises more than the others: look under each for dirt, burrs and a bent foot, then at the bed and its fastening.',
} as const

/** What to do at the worst foot. */
function sayRemedy(missing: SoftFound['missing'], system: UnitSystem): string {
  if (typeof missing === 'string') return unnamed[missing]
  const { name, step } = missing
  const height = saidLength(missing.height, system)
  if (step.by === 'hand')
    return step.onStuds
      ? `Raise ${name} by ${height} with its lower nut.`
      : `Shim or raise ${name} by ${height}.`
  if (step.by === 'nut') {
    const { move, smallest, raises } = step
    const turn = `Slacken the upper nut at ${name} by a flat more than its lower nut goes up. Turn the lower nut ${raises}, seen from above,`
    return move.direction === 'none'
      ? `${turn} only until the foot bears: ${height} is missing, less than half of the smallest step of the nut, ${saidLength(smallest, system)}.`
      : `${turn} ${sayTurns(move)}: up ${saidLength(move.moved, system)}, ${height} is wanted.`
  }
  const pieces = step.pieces.map((piece) => saidShim(piece, system))
  if (pieces.length === 0)
    return `Put ${height} of shims under ${name}${step.listed ? '; the bed lists none that come near' : ''}.`
  return pieces.length === 1
    ? `Put a shim of ${pieces.join()} under ${name}; ${height} is wanted.`
    : `Put shims of ${pieces.join(' + ')} under ${name}, together ${saidShim(step.thickness, system)}; ${height} is wanted.`
}

/** What to do about soft feet, in the order of the work. */
export const aboutSoft = ({ missing }: SoftFound, system: UnitSystem): string =>
  `Isolate and lock off the drive, prove it dead, and support the machine. ${sayRemedy(missing, system)} Note it as a move. Tighten all feet and read the lifts of all of them again: the next foot, if any, comes after that. Read the coupling again once no foot is soft.`

/** Why the reading is not to be trusted while a foot is soft. */
export function softDoubt(found: SoftFound, system: UnitSystem, since?: string): Doubt {
  const several = found.soft.length > 1
  return {
    type: 'soft-foot',
    words: `${several ? 'Feet' : 'Foot'} ${found.soft.join(', ')} ${several ? 'are' : 'is'} soft: slackened, ${several ? 'they rise' : 'it rises'} by more than ${saidLimit(softLimit, system)}, so the machine bends as the feet are tightened and this reading is not to be trusted.${since === undefined ? '' : ` That was found at the reading ${since}, and the lifts were not read again since.`} ${aboutSoft(found, system)}`,
  }
}
