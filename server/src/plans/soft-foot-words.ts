import type { UnitSystem } from '../quantity/kinds.ts'
import { saidLength, saidLimit, saidShim } from '../quantity/said.ts'
import type { Doubt } from './alignment-doubts.ts'
import { type SoftFound, softLimit } from './alignment-lifts.ts'
import { listed } from './listed.ts'
import { sayTurns } from './turn-words.ts'

/** Tighten before reading: a foot is slackened alone. */
const readAll = 'Tighten all feet, and read the lifts of all of them again, each slackened alone.'

/** What to do where no foot can be named. */
const unnamed = {
  'too-few-lifts': `From fewer than three lifts it cannot be said what to do. ${readAll}`,
  alike:
    'All feet rise alike: the bed springs, or the machine stands on a bowed frame, and no shim helps. Look at the bed and its fastening: loose or missing bolts, cracked welds, a bearer that gives. Mend what is found there.',
  'moved-since': `A foot was moved since, so what is left to do is not known. ${readAll}`,
  'read-apart': `The lifts were not all read at one time, so what is left to do is not known. ${readAll}`,
  'none-stands-out':
    'No foot rises more than the others: look under each for dirt, burrs and a bent foot, then at the bed and its fastening. Mend what is found there.',
} as const

/** Those whose cause lies where no nut and no shim reaches. */
const causeElsewhere: readonly unknown[] = ['alike', 'none-stands-out']

/** What to do at the worst foot. */
function sayRemedy(missing: Exclude<SoftFound['missing'], string>, system: UnitSystem): string {
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

/** What to do about soft feet, in the order of the work. What is done under a foot that hangs moves no machine, so it is noted as no move: the log
 * would expect the next reading to show it. */
export function aboutSoft({ missing }: SoftFound, system: UnitSystem): string {
  const first = 'Isolate and lock off the drive, prove it dead, and support the machine.'
  const last = 'Read the coupling again once no foot is soft.'
  if (typeof missing === 'object')
    return `${first} ${sayRemedy(missing, system)} This moves no machine: write it as a \`note\` of the next reading, not as a move. Tighten all feet and read the lifts of all of them again: the next foot, if any, comes after that. ${last}`
  const accept =
    'Where the bed has to stay as it is, a concession for alignment/soft-foot gives the steps all the same.'
  return [
    first,
    unnamed[missing],
    ...(causeElsewhere.includes(missing) ? [readAll, last, accept] : [last]),
  ].join(' ')
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
      : ` That was found at the ${since.length > 1 ? 'readings' : 'reading'} ${listed(since)}, and ${several ? 'their lifts were' : 'its lift was'} not read again since.`
  const what = `${several ? 'Feet' : 'Foot'} ${found.soft.join(', ')} ${several ? 'are' : 'is'} soft: slackened, ${several ? 'they rise' : 'it rises'} by more than ${saidLimit(softLimit, system)}, so the machine bends as the feet are tightened and this reading is not to be trusted.${when}`
  return {
    type: 'soft-foot',
    words: accepted
      ? `${what} This has a concession, so it holds back no steps. Tighten the feet in the same order and to the same torque each time. The next reading may still differ from what is said here.`
      : `${what} ${aboutSoft(found, system)}`,
  }
}
