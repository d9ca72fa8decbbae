import { formatLength, formatLimit, formatShim } from '../../../quantity/format-measures.ts'
import type { UnitSystem } from '../../../quantity/kinds.ts'
import { isolateBriefly } from '../../common/dangers.ts'
import { listed } from '../../common/listed.ts'
import type { Doubt } from './doubts.ts'
import { type SoftFound, softLimit } from './lifts.ts'
import { formatTurns } from './turn-words.ts'

/** Tighten before reading: a foot is slackened alone. */
const readAll = 'Tighten all feet. Then read the lifts of all of them again, each slackened alone.'

/** What to do where no foot can be named. */
const unnamed = {
  'too-few-lifts': readAll,
  alike:
    'Look at the bed and its fastening: loose or missing bolts, cracked welds, a weak bearer. Repair what you find. All feet rise alike, so the bed gives or the frame is bowed: shims do not help.',
  'moved-since': `${readAll} The lifts were read before a foot was moved.`,
  'read-apart': `${readAll} They were not all read at one time.`,
  'none-stands-out':
    'Look under each foot for dirt, burrs and a bent foot, then at the bed and its fastening. Repair what you find. No foot rises more than the others.',
} as const

/** Those whose cause lies where no nut and no shim reaches. */
const causeElsewhere: readonly unknown[] = ['alike', 'none-stands-out']

/** What to do at the worst foot. */
function formatRemedy(missing: Exclude<SoftFound['missing'], string>, system: UnitSystem): string {
  const { name, step } = missing
  const height = formatLength(missing.height, system)
  if (step.by === 'hand')
    return step.onStuds
      ? `Raise ${name} by ${height} with its lower nut.`
      : `Shim or raise ${name} by ${height}.`
  if (step.by === 'nut') {
    const { move, smallest, raises } = step
    const turn = `Slacken the upper nut at ${name} by a flat more than its lower nut goes up. Turn the lower nut ${raises}, seen from above,`
    return move.direction === 'none'
      ? `${turn} only until the foot bears: ${height} is missing, less than half of the smallest step of the nut, ${formatLength(smallest, system)}.`
      : `${turn} ${formatTurns(move)}: up ${formatLength(move.moved, system)}, ${height} is needed.`
  }
  const pieces = step.pieces.map((piece) => formatShim(piece, system))
  if (pieces.length === 0)
    return `Put ${height} of shims under ${name}${step.listed ? '; the bed lists none that fit' : ''}.`
  return pieces.length === 1
    ? `Put a shim of ${pieces.join()} under ${name}; ${height} is needed.`
    : `Put shims of ${pieces.join(' + ')} under ${name}, together ${formatShim(step.thickness, system)}; ${height} is needed.`
}

/** What to do about soft feet, in the order of the work. What is done under a foot that hangs moves no machine, so it is noted as no move: the log
 * would expect the next reading to show it. */
export function aboutSoft({ missing }: SoftFound, system: UnitSystem): string {
  const last = 'Read the coupling again once no foot is soft.'
  if (typeof missing === 'object')
    return `${formatRemedy(missing, system)} This does not move the machine: write it as a \`note\` of the next reading, not as a move. Tighten all feet and read all lifts again before the next foot. ${last}`
  const accept =
    'If the bed must stay as it is, a concession for alignment/soft-foot lets the plan give steps.'
  return [unnamed[missing], ...(causeElsewhere.includes(missing) ? [readAll, last, accept] : [last])].join(
    ' ',
  )
}

/** Why the reading is not to be trusted while a foot is soft. `since`: the earlier readings that found it. `accepted`: a concession gives the steps all
 * the same. */
export function softDoubt(
  found: SoftFound,
  system: UnitSystem,
  { since, accepted }: { readonly since: readonly string[]; readonly accepted: boolean },
): Doubt {
  const several = found.soft.length > 1
  const when =
    since.length === 0
      ? ''
      : ` ${since.length > 1 ? 'Readings' : 'Reading'} ${listed(since)} found this, and ${several ? 'their lifts were' : 'its lift was'} not read again since.`
  const what = `${several ? 'Feet' : 'Foot'} ${found.soft.join(', ')} ${several ? 'are' : 'is'} soft: when slackened, ${several ? 'they rise' : 'it rises'} by more than ${formatLimit(softLimit, system)}. The machine bends as the feet are tightened, so do not trust this reading.${when}`
  return {
    type: 'soft-foot',
    words: accepted
      ? `${what} This has a concession, so the plan still gives steps. Tighten the feet in the same order and to the same torque each time. The next reading may still differ from this plan.`
      : `${what} ${isolateBriefly} Support the machine. ${aboutSoft(found, system)}`,
  }
}
