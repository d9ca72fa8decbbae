import type { Closure } from '../engineering/alignment/closure.ts'
import { formatSi } from '../quantity/format.ts'
import type { UnitSystem } from '../quantity/kinds.ts'
import { saidGauge, saidLength, saidLimit, saidShim } from '../quantity/said.ts'
import type { Correction } from './alignment.ts'
import { allUnseen } from './alignment-asked.ts'
import { sayAngle } from './alignment-fault.ts'
import { sayRound } from './alignment-readings.ts'
import type { Repeats } from './alignment-repeats.ts'
import { nearByEye } from './alignment-rough.ts'
import type { Way } from './choose-moves.ts'

/** Why nothing can be said for certain, and what would help. */
function undecided(c: Correction, system: UnitSystem): string | undefined {
  if (c.verdict !== 'undecided') return undefined
  if (c.gapVariation.verdict === 'within' && !c.offset)
    return 'The offset was not read, so the machine is not shown to be aligned. Read the rims as well.'
  return c.decidedBy === undefined
    ? 'The reading lies too near the limit, or what was read agrees too badly, for any gauge to decide: read again.'
    : `A gauge with steps of ${saidGauge(c.decidedBy, system)} or finer could decide.`
}

const tooFar = (c: Correction, system: UnitSystem): string | undefined =>
  c.withheld === 'far-off'
    ? `A foot would go more than ${saidLength(nearByEye, system)}: check the gaps, the diameters and the places of the feet. Where they are right, bring the machine near by straightedge first.`
    : undefined

/** One way to bring the machine inside, in words. */
function sayWay(way: Way, system: UnitSystem): string {
  switch (way.type) {
    case 'finer-step':
      return `turning the nuts by ${{ 2: 'half flats', 4: 'quarter flats', 8: 'eighths of a flat' }[way.partsOfFlat] ?? 'finer steps'}`
    case 'thinner-shim':
      return `shims of ${saidShim(way.thickness, system)}`
    case 'travel':
      return `${saidLength(Math.abs(way.up), system)} of travel ${way.up < 0 ? 'down' : 'up'} at ${way.foot}`
    case 'hole-clearance':
      return `a hole at ${way.foot} that lets it ${saidLength(way.sideways, system)} to either side`
  }
}

/** Steps that leave the machine outside, and what would not; or inside, but nearer to a limit than the gauge can tell. */
function notReached(c: Correction, system: UnitSystem): string | undefined {
  if (!c.predicted || c.verdict === 'within' || c.withheld) return undefined
  if (!c.predicted.inside)
    return `${
      c.untried
        ? 'No steps were found that bring the machine inside its limits, but not all could be tried'
        : 'No steps that the adjusters can make bring the machine inside its limits'
    }; these bring it nearest. ${
      c.ways.length > 0
        ? `What would: ${c.ways.map((together) => together.map((way) => sayWay(way, system)).join(' and ')).join('; or ')}.`
        : 'Set each foot to its height by gauge.'
    }`
  return c.predicted.provable
    ? undefined
    : `These steps bring the machine inside its limits, but nearer to one of them than the next reading can prove with steps of ${formatSi(c.gaugeStep, 'length', system)}: read with a finer gauge.`
}

function closureLine(closure: Closure, what: string, system: UnitSystem): string | undefined {
  if (closure.state !== 'open') return undefined
  return `The ${what} do not close: opposite pairs differ by ${saidLength(closure.difference, system)}, the gauge explains ${saidLimit(closure.allowed, system)}. Read again before anything is moved: no moves are given from these.`
}

function repeatsLine(repeats: Repeats | undefined, what: string, system: UnitSystem): string | undefined {
  if (!repeats) return undefined
  return `The ${what} read more than once at ${sayAngle(repeats.angle)} differ by ${saidLength(repeats.difference, system)}, the gauge explains ${saidLimit(repeats.allowed, system)}. Read again before anything is moved: no moves are given from these.`
}

/** What the reading is still good for once the machine was moved. */
const moved = ({ movedSince, laterReading }: Correction): string | undefined =>
  movedSince
    ? `The machine was moved after this reading: read again${laterReading ? `, or go by the last reading, ${laterReading}` : ''}. No moves are given from this one.`
    : undefined

const errors = ({ errors: all = [] }: Correction): string | undefined =>
  all.length === 0
    ? undefined
    : `${all.length === 1 ? 'An error stands' : `${all.length} errors stand`} in what this plan hangs on; put ${all.length === 1 ? 'it' : 'them'} right first: ${all.map(({ check, place }) => `${check} at ${place}`).join(', ')}.`

/** Moves that the gauge cannot see. An error that is proven outside is still an error: the moves then stay, with the doubt said. */
function unsure(c: Correction): string | undefined {
  if (c.verdict === 'within' || !allUnseen(c.feet)) return undefined
  return c.verdict === 'undecided'
    ? 'At every foot U is larger than the move: it is not worth moving until a finer gauge or a better reading shows more.'
    : 'The machine is proven outside its limits, yet at every foot U is larger than the move: a finer gauge or a better reading would place the feet better.'
}

/** What stands against moving the machine by this plan, or against believing it. */
export const warningsOf = (c: Correction, system: UnitSystem): readonly string[] =>
  [
    c.slip,
    moved(c),
    ...c.doubts.filter(({ type }) => !(c.movedSince && type === 'later-reading')).map(({ words }) => words),
    errors(c),
    undecided(c, system),
    unsure(c),
    repeatsLine(c.repeats?.gaps, sayRound(c.readBy.face), system),
    repeatsLine(c.repeats?.offsets, sayRound(c.readBy.rim ?? 'offsets'), system),
    closureLine(c.closure, sayRound(c.readBy.face), system),
    c.rimClosure && closureLine(c.rimClosure, sayRound(c.readBy.rim ?? 'offsets'), system),
    c.feetFault?.words,
    tooFar(c, system),
    notReached(c, system),
  ].filter((line): line is string => line !== undefined)
