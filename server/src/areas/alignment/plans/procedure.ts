import { formatSi } from '../../../quantity/format.ts'
import { formatLength, isFormattedAsZero } from '../../../quantity/format-measures.ts'
import type { UnitSystem } from '../../../quantity/kinds.ts'
import type { Correction } from './correction.ts'
import { crosswise, endsOf, holder, named, onStuds } from './feet-together.ts'
import { heightTasks } from './heights.ts'
import { asBefore, formatAllowed } from './next-reading-words.ts'
import { roughTasks } from './rough-work.ts'
import type { CorrectedFoot } from './steps.ts'
import { isolate, part, secureShaft, support, type Task, taskLines } from './tasks.ts'
import { workOf } from './work.ts'

/** The work that the steps of a plan ask for: safe first, then heights, sideways, fastening, reading. Empty where there is nothing to be moved.
 * Common practice, no source. */
function tasksOf(c: Correction, system: UnitSystem): readonly Task[] {
  if (c.verdict === 'within') return c.withheld || c.feet.length === 0 ? [] : [isolate, join(c, system)]
  if (c.withheld === 'far-off') return roughTasks(c, system)
  const work = workOf(c, system)
  const slid = c.feet.filter((foot) => foot.step.by !== 'none' && !isFormattedAsZero(foot.slid, system))
  if (c.withheld || (!work && slid.length === 0)) return []
  return [
    isolate,
    secureShaft,
    part,
    support,
    ...(work ? heightTasks(work, c, system) : []),
    ...(slid.length > 0 ? [sideways(c, work !== undefined, system)] : []),
    settle(c, work !== undefined),
    tighten(c, system),
    { words: readAgain(c, system) },
    join(c, system),
  ]
}

/** What a dial at the foot shows at the end. */
const dial = (foot: CorrectedFoot, system: UnitSystem): string =>
  isFormattedAsZero(foot.slid, system)
    ? 'still zero'
    : `${formatLength(Math.abs(foot.slid), system)} to ${foot.slid < 0 ? 'port' : 'starboard'}`

function sideways(c: Correction, isSlack: boolean, system: UnitSystem): Task {
  const shown = endsOf(c.feet)
    .map((feet) => (feet[0] ? `${dial(feet[0], system)} at ${named(feet, 'or')}` : ''))
    .join(', ')
  return {
    words: `Sideways: ${
      isSlack
        ? `${onStuds(c) ? 'run the upper nuts down' : `tighten the ${holder(c)}`} again`
        : `slacken all ${holder(c)}`
    } until the feet just slide. Set two dials against the machine at the height of the feet, one at each end, and zero both. Push with the jacking screws, a little at each end in turn, until the dials show ${shown}.`,
    caution: 'Push with the screws only: a lever or a hammer makes the machine jump.',
  }
}

function settle(c: Correction, raised: boolean): Task {
  return onStuds(c)
    ? {
        words: `${raised ? 'Slacken all upper nuts once more, but not the lower ones,' : 'Leave all upper nuts slack'} and let the machine settle. Try each lower nut by hand: none may turn freely. A foot with air under it is soft: run its lower nut up until it just touches. This does not move the machine, so do not log it as a move.`,
      }
    : {
        words: `${raised ? `Slacken all ${holder(c)} once more` : `Leave all ${holder(c)} slack`}, let the machine settle, and check under each foot with a feeler gauge. A foot with air under it is soft: fill the gap with shims. This does not move the machine, so do not log it as a move.`,
      }
}

function tighten(c: Correction, system: UnitSystem): Task {
  const { torque, lowerTorque } = c.hardware ?? {}
  const to =
    torque === undefined
      ? 'the torque specified by the maker of the machine or its mounts'
      : formatSi(torque, 'torque', system)
  const studs = onStuds(c)
  const lower =
    studs && lowerTorque !== undefined
      ? ` Then tighten the lower nuts to ${formatSi(lowerTorque, 'torque', system)}, and hold the upper ones.`
      : ''
  return {
    words: `Tighten the ${holder(c)} crosswise (${crosswise(c.feet)
      .map(({ name }) => name)
      .join(', ')}) to ${to}, in three rounds: one third, two thirds, then all of it.${
      studs ? ' Hold the lower nuts still with a second spanner.' : ''
    }${lower}${
      c.feet.some(({ slid }) => !isFormattedAsZero(slid, system))
        ? ' Watch the dials: they must not move. If one does, set the machine sideways again.'
        : ''
    }`,
  }
}

const readAgain = (c: Correction, system: UnitSystem): string =>
  `After the final torque, read again with the same gauge at the same places${asBefore(c)}, and add the reading to the log. Allowed: ${formatAllowed(c, system)}. What it should show is given above.`

function join(c: Correction, system: UnitSystem): Task {
  const bolts = c.hardware?.couplingBolts
  const to =
    bolts?.torque === undefined
      ? 'the torque specified by the maker of the coupling'
      : `${formatSi(bolts.torque, 'torque', system)} (${bolts.count} x ${bolts.thread})`
  const words =
    c.verdict === 'within'
      ? `Join the coupling with its marks in line, and tighten the bolts crosswise to ${to}.${readAfloat(c)}`
      : `Join the coupling only when a reading proves it within its limits. Put the marks in line, and tighten the bolts crosswise to ${to}.`
  return { words }
}

/** A hull changes its shape afloat. */
function readAfloat({ afloat }: Correction): string {
  if (afloat) return ''
  return afloat === undefined
    ? ' If this reading was taken dry, read again afloat.'
    : ' This reading was taken dry: read again afloat.'
}

/** The work, numbered, for a terminal. Empty where nothing is to be moved. */
export const procedureLines = (c: Correction, system: UnitSystem): readonly string[] =>
  taskLines(tasksOf(c, system))
