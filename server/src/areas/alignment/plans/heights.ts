import { formatLength, formatRoom } from '../../../quantity/format-measures.ts'
import type { UnitSystem } from '../../../quantity/kinds.ts'
import { canDrop } from '../../common/dangers.ts'
import type { Correction } from './correction.ts'
import { alike, holder, named, onStuds } from './feet-together.ts'
import { formatStep, formatTurns } from './foot-words.ts'
import type { CorrectedFoot } from './steps.ts'
import type { Task } from './tasks.ts'
import type { Work } from './work.ts'

const handsClear =
  'Keep hands and fingers from under the feet. Keep the weight on nuts, jack or hoist at all times.'

/** The height of the feet: slacken, and set. */
export const heightTasks = (work: Work, c: Correction, system: UnitSystem): readonly Task[] => [
  slacken(work, c, system),
  c.adjuster === 'shims' ? packs(work, c, system) : turns(work, c, system),
]

/** `5 flats (1.67 mm)`; a length alone where the thread is not known. */
const formatFlats = (length: number, { flat }: Work, system: UnitSystem): string => {
  if (flat === undefined) return formatRoom(length, system)
  const flats = Math.round(length / flat)
  return `${formatTurns({ turns: Math.floor(flats / 6), flats: flats % 6 })} (${formatLength(length, system)})`
}

/** One figure for all feet is the easier to keep in mind; where feet need less by this many steps or more, each station has its own. */
const muchLess = 2

/** Which way loosens what holds the feet, where it is not the usual way. */
const loosens = (c: Correction): string =>
  onStuds(c) && c.hardware?.thread?.hand === 'left'
    ? ' The studs have a left-hand thread: seen from above, clockwise loosens an upper nut.'
    : ''

function slacken(work: Work, c: Correction, system: UnitSystem): Task {
  const most = Math.max(...work.slack)
  const own = work.slack.some((length) => most - length >= muchLess * work.slackStep - 1e-9)
  const slackAt = (foot: CorrectedFoot) =>
    formatFlats(own ? (work.slack[c.feet.indexOf(foot)] ?? most) : most, work, system)
  const groups = [...alike(c.feet, slackAt)]
  const by = groups.map(([slack, feet]) => (groups.length > 1 ? `${slack} at ${named(feet)}` : slack))
  const rests =
    c.adjuster === 'shims'
      ? ''
      : ' Leave the lower nuts alone: the machine rests on them, or on the jack or hoist where its centre of gravity is not over the feet.'
  return {
    words: `Slacken all ${holder(c)} by ${by.join(', ')}, no more: they keep the machine from falling.${loosens(c)}${rests}`,
  }
}

/** `up 2 flats`, `down 0.30 mm`. */
const formatVisit = (by: number, { flat }: Work, system: UnitSystem): string => {
  const way = by < 0 ? 'down' : 'up'
  if (flat === undefined) return `${way} ${formatLength(Math.abs(by), system)}`
  return `${way} ${formatTurns({ turns: 0, flats: Math.abs(by) / flat })}`
}

/** How the nuts of a station are turned so that the machine does not roll. */
function inTurn(work: Work, c: Correction, system: UnitSystem): string {
  if (!onStuds(c)) return ''
  const by = work.flat === undefined ? formatLength(work.inTurn, system) : 'a flat'
  const pairs = work.passes.flat().some(({ feet }) => feet.length > 1)
  return pairs ? `, ${by} at a time, alternating between the feet of a pair` : `, ${by} at a time`
}

/** What holds a machine that goes down has to follow it. */
const followDown = (work: Work, c: Correction): string =>
  work.passes.flat().some(({ by }) => by < 0)
    ? ` Where feet go down, bring their ${holder(c)} down after each pass, to the same slack as before.`
    : ''

/** `, about 1½ flats`, where that is a quarter of one or more. */
function aboutAs(by: number, { flat = by }: Work): string {
  const flats = Math.abs(by) / flat
  return Math.round(4 * flats) === 0 ? '' : `, about ${formatTurns({ turns: 0, flats })}`
}

function turns(work: Work, c: Correction, system: UnitSystem): Task {
  const lines = work.passes.map((visits, i) => {
    const last = i === work.passes.length - 1
    const visitTexts = visits.map(({ feet, by }) =>
      last && by > 0 && feet.some(({ step }) => step.by === 'nut' && step.touch)
        ? `${named(feet)} up until ${feet.length > 1 ? 'they just touch' : 'it just touches'}${aboutAs(by, work)}`
        : `${named(feet)} ${formatVisit(by, work, system)}`,
    )
    return `${work.passes.length > 1 ? `pass ${i + 1}: ` : ''}${visitTexts.join('; then ')}`
  })
  const nuts = onStuds(c)
  return {
    words: `${nuts ? 'Turn the lower nuts' : 'Set the feet'} in this order${inTurn(work, c, system)}.${nuts ? ` ${formatTurning(c)}` : ''}${followDown(work, c)}`,
    lines,
    caution: handsClear,
  }
}

/** Which way the lower nuts go, once. */
function formatTurning(c: Correction): string {
  const way = (sign: number) =>
    c.feet.flatMap(({ step, moved }) =>
      step.by === 'nut' && moved * sign > 0 && step.move.lowerNut ? [step.move.lowerNut] : [],
    )[0]
  const known = [...(way(1) ? [`up is ${way(1)}`] : []), ...(way(-1) ? [`down is ${way(-1)}`] : [])]
  if (known.length > 0) return `Mark one flat of each to count from. Seen from above, ${known.join(', ')}.`
  return 'On a right-hand thread, seen from above, up is counter-clockwise. Measure each foot with a dial or a gauge.'
}

function packs(work: Work, c: Correction, system: UnitSystem): Task {
  const between = work.packs.length > 2
  return {
    words: `Change the packs in this order, one end at a time. Lift the end${between ? ' (for feet between, the nearer end)' : ''} until its feet are clear by the height given, no more. Hold it there with a jack or a hoist. Put shims in and take them out with a tool. Lower the end before you lift the next.`,
    lines: work.packs.map(
      ({ feet, lift }) =>
        `${named(feet)}: lift ${formatRoom(lift, system)}, then ${formatPacks(feet, c, system)}`,
    ),
    caution: canDrop,
  }
}

/** What goes in and comes out; foot by foot only where they differ. */
function formatPacks(feet: readonly CorrectedFoot[], c: Correction, system: UnitSystem): string {
  const groups = [...alike(feet, (foot) => formatStep(foot, c, system))]
  return groups.map(([step, some]) => (groups.length > 1 ? `at ${named(some)} ${step}` : step)).join('; ')
}
