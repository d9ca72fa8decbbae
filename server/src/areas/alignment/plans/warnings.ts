import type { Closure } from '../../../engineering/alignment/closure.ts'
import { elide } from '../../../quantity/elide.ts'
import { formatGaugeStep, formatLength, formatLimit, formatRough } from '../../../quantity/format-measures.ts'
import type { UnitSystem } from '../../../quantity/kinds.ts'
import { formatOpen } from './closure-words.ts'
import type { Correction } from './correction.ts'
import type { Withheld } from './doubts.ts'
import { formatAngle } from './fault.ts'
import { allBelowUncertainty } from './foot-correction-plan.ts'
import { notesOnSteps } from './notes.ts'
import { formatPlanned } from './planned-move-words.ts'
import { formatRoundFact } from './readings.ts'
import type { Repeats } from './repeats.ts'
import { nearByEye } from './rough.ts'
import { notReached } from './ways-inside.ts'

/** Why nothing can be said for certain, and what would help. */
function undecided(c: Correction, system: UnitSystem): string | undefined {
  if (c.verdict !== 'undecided' || c.contradictory) return undefined
  if (c.gapVariation.verdict === 'within' && !c.offset)
    return 'The offset was not read, so this does not prove that the machine is aligned. Read the rims as well.'
  return c.decidedBy === undefined
    ? 'No gauge could decide: the reading is too near the limit, or its values agree too badly. Read again.'
    : `A gauge with steps of ${formatGaugeStep(c.decidedBy, system)} or finer could decide${c.offsetBasis === 'unknown' ? ' the gap variation' : ''}.`
}

/** Steps that take out the slope alone do not align a machine. A gap variation that is within is told by `undecided`. */
const offsetUnread = ({ offsetBasis, gapVariation, withheld }: Correction): string | undefined =>
  offsetBasis === 'unknown' && gapVariation.verdict !== 'within' && !withheld
    ? 'The offset was not read: these steps correct the slope only, and do not prove that the machine is aligned. Read the rims as well.'
    : undefined

const tooFar = (c: Correction, system: UnitSystem): string | undefined =>
  c.withheld === 'far-off'
    ? `A foot would go more than ${formatRough(nearByEye, system)}. Check the gaps, the diameters and the places of the feet. If they are right, align roughly with a straightedge first.`
    : undefined

const closureLine = (closure: Closure | undefined, what: string, system: UnitSystem): string | undefined =>
  closure?.state === 'open' ? formatOpen(closure, what, system) : undefined

const repeatsLine = (repeats: Repeats | undefined, what: string, system: UnitSystem): string | undefined =>
  repeats &&
  `The ${what} read more than once at ${formatAngle(repeats.angle)} differ by ${formatLength(repeats.difference, system)}; the gauge explains ${formatLimit(repeats.allowed, system)}.`

/** What of the reading contradicts itself, and then once what to do about it. */
function contradictions(c: Correction, system: UnitSystem): string | undefined {
  const [faces, rims] = [formatRoundFact(c.readBy.face), formatRoundFact(c.readBy.rim ?? 'offsets')]
  const found = [
    repeatsLine(c.repeats?.gaps, faces, system),
    repeatsLine(c.repeats?.offsets, rims, system),
    closureLine(c.closure, faces, system),
    closureLine(c.rimClosure, rims, system),
  ].filter((line) => line !== undefined)
  return found.length === 0
    ? undefined
    : [...found, 'Read again before you move anything: this reading gives no moves.'].join(' ')
}

/** What the reading is still good for once the machine was moved. */
const moved = ({ movedSince, laterReading }: Correction): string | undefined =>
  movedSince
    ? `The machine was moved after this reading, so it gives no moves. Read again${laterReading ? `, or use the last reading, ${laterReading}` : ''}.`
    : undefined

const errors = ({ errors: all = [] }: Correction): string | undefined =>
  all.length === 0
    ? undefined
    : `The plan depends on ${all.length === 1 ? 'an error' : `${all.length} errors`}. Fix ${all.length === 1 ? 'it' : 'them'} first: ${all.map(({ check, place }) => `${check} at ${place}`).join(', ')}.`

/** What was found, what to do about it, and that it may be accepted instead. */
const findings = ({ findings: all = [] }: Correction): readonly string[] =>
  all.map(
    ({ check, place, message, todo }) =>
      `${message} ${todo} Until then the plan gives no steps, unless the job has a concession for ${check} (at ${place}).`,
  )

/** Who accepted what: the plan is made as if it were in order. */
const accepted = ({ accepted: all = [] }: Correction): readonly string[] =>
  all.map(
    ({ check, place, message, by, until, isPast }) =>
      `Accepted by ${elide(by).replaceAll(/\s+/g, ' ')} until ${until}${isPast ? ', which has passed' : ''}: ${message} (${check} at ${place})`,
  )

/** Moves that the gauge cannot see. An error that is proven outside is still an error: the moves then stay, with the doubt said. */
function unsure(c: Correction): string | undefined {
  if (c.verdict === 'within' || !allBelowUncertainty(c.feet)) return undefined
  return c.verdict === 'undecided'
    ? 'At every foot, U is larger than the move. Move nothing until a finer gauge or a better reading shows more.'
    : 'The machine is proven outside its limits, but at every foot U is larger than the move. A finer gauge or a better reading would place the feet better.'
}

/** A line of warning, and why no steps are given where that is what it is about. */
interface Warning {
  readonly words: string | undefined
  readonly withholds?: Withheld
}

/** What stands against moving the machine by this plan, or against believing it: first what is wrong in the job, then what withholds the steps, then
 * what else would, then what only limits them. */
export function warningsOf(c: Correction, system: UnitSystem): readonly string[] {
  const all: readonly Warning[] = [
    { words: moved(c), withholds: 'moved-since' },
    ...c.doubts
      .filter(({ type }) => !(c.movedSince && type === 'later-reading'))
      .map(({ words, type }) => ({ words, withholds: type })),
    { words: contradictions(c, system), withholds: 'contradictory' },
    { words: c.moveDiscrepancy, ...(c.withheld === 'another-effect' && { withholds: 'another-effect' }) },
    ...formatPlanned(c).map((words): Warning => ({ words })),
    { words: unsure(c), ...(c.verdict === 'undecided' && { withholds: 'unsure' }) },
    { words: c.feetFault?.words },
    { words: offsetUnread(c) },
    { words: tooFar(c, system) },
    { words: notReached(c, system) },
    { words: undecided(c, system) },
    ...notesOnSteps(c, system).map((words): Warning => ({ words })),
  ]
  const rank = ({ withholds }: Warning) => (withholds === undefined ? 2 : withholds === c.withheld ? 0 : 1)
  return [
    errors(c),
    ...findings(c),
    ...accepted(c),
    ...all.toSorted((a, b) => rank(a) - rank(b)).map(({ words }) => words),
  ].flatMap((words) => words ?? [])
}
