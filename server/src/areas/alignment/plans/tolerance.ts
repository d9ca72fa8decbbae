import { assumedGapLimit } from '../../../engineering/alignment/gap-variation.ts'
import { type SpeedLimits, speedLimits, tableEnds } from '../../../engineering/alignment/speed-limits.ts'
import { type Block, factOf, type Value } from '../../../job/model.ts'
import { formatSi } from '../../../quantity/format.ts'
import { formatLimit } from '../../../quantity/format-measures.ts'
import { OutOfRange } from '../../../quantity/out-of-range.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { statedFact } from '../../common/stated-fact.ts'
import { gaugeCircle } from './gauge-circle.ts'

/** What is allowed, m, and where that is from: `the maker`, `the job file`, or the rule that was assumed. */
export interface Tolerance {
  readonly limit: number
  readonly limitFrom: string
}

const statedBy = (value: Value<unknown>): string =>
  value.provenance?.words.includes('maker') ? 'the maker' : 'the job file'

/** The upper end that the coupling states itself. */
function stated(coupling: Block, of: 'gap-variation' | 'offset'): Tolerance | undefined {
  statedFact(coupling, `coupling.${of}`)
  const fact = factOf(coupling, `coupling.${of}`)
  return fact?.value.high === undefined ? undefined : { limit: fact.value.high, limitFrom: statedBy(fact) }
}

/** No more than the flexible element is rated for: where that is less than what else would be allowed, it is the limit. `rating` m. */
const ratedFor = (tolerance: Tolerance, rating: number | undefined): Tolerance =>
  rating !== undefined && rating < tolerance.limit
    ? { limit: rating, limitFrom: 'the rating of the coupling' }
    : tolerance

/** What the speed of a flexible coupling allows. */
interface BySpeed extends SpeedLimits {
  readonly words: string
}

/** Undefined for a coupling that is not flexible, or whose speed is not known. A coupling turns with the shaft, so behind a gear at the speed
 * of the motor over the ratio. */
function bySpeed(coupling: Block, lookup: Lookup, assumptions: string[]): BySpeed | undefined {
  if (statedFact(coupling, 'coupling.kind') !== 'flexible') return undefined
  const motor = statedFact(lookup.near('motor'), 'motor.speed')
  if (motor === undefined) return undefined
  const gear = lookup.near('gear')
  const ratio = statedFact(gear, 'gear.ratio')
  const noRatio = 'the coupling turns as fast as the motor: the gear does not state its ratio'
  if (gear && ratio === undefined && !assumptions.includes(noRatio)) assumptions.push(noRatio)
  // A nominal speed has to meet its row of the table: what the units leave behind it is rounded off.
  const speed = Number((motor / (ratio ?? 1) / turnAMinute).toPrecision(12))
  return {
    ...speedLimits(speed),
    words: `short flexible couplings at ${formatTurns(speed)}, general industry table`,
  }
}

/** rad/s. */
const turnAMinute = (2 * Math.PI) / 60

/** From turns a minute. */
const formatTurns = (speed: number): string => formatSi(speed * turnAMinute, 'rotational speed')

/** What the table of speeds leaves open; said once. */
function beyondTable({ beyondTable }: BySpeed, assumptions: string[]): void {
  const words = `the table of speeds ends at ${formatTurns(tableEnds)}: its last row is used, and the maker may allow less`
  if (beyondTable && !assumptions.includes(words)) assumptions.push(words)
}

const noSpeed = (coupling: Block): string | undefined =>
  statedFact(coupling, 'coupling.kind') === 'flexible'
    ? 'the speed of the flexible coupling is not known, so no limit by speed is used'
    : undefined

/** Where the gauge goes in, m. */
interface Circle {
  readonly flange: number
  readonly readAt: number
}

/** What gap variation is allowed on the circle the gauge goes in on (`readAt`, m): as stated; else by the diameter of the flange; of a
 * flexible coupling by its speed too, and the stricter of the two. Never more than the coupling is rated for. */
export function gapTolerance(
  coupling: Block,
  circle: Circle,
  lookup: Lookup,
  assumptions: string[],
): Tolerance {
  const angle = statedFact(coupling, 'coupling.max-angle')
  const rated = angle === undefined ? undefined : angle * circle.readAt
  return ratedFor(gapsAllowed(coupling, circle, lookup, assumptions), rated)
}

function gapsAllowed(
  coupling: Block,
  { flange, readAt }: Circle,
  lookup: Lookup,
  assumptions: string[],
): Tolerance {
  const own = stated(coupling, 'gap-variation')
  if (own) {
    if (Math.abs(readAt - flange) > 1e-6)
      assumptions.push(
        `the limit for gap variation applies where the gauge goes in, on ${formatSi(readAt, 'length', lookup.system)}`,
      )
    return own
  }
  return usualGaps(coupling, { flange, readAt }, lookup, assumptions)
}

function usualGaps(
  coupling: Block,
  { flange, readAt }: Circle,
  lookup: Lookup,
  assumptions: string[],
): Tolerance {
  // The rule is of the flange; on a smaller circle the same slope shows less, so the limit shrinks with it.
  const byDiameter = assumedGapLimit(flange) * (readAt / flange)
  const speed = bySpeed(coupling, lookup, assumptions)
  const missing = speed ? undefined : noSpeed(coupling)
  if (missing) assumptions.push(missing)
  const limit = (speed?.gapPerDiameter ?? Number.POSITIVE_INFINITY) * readAt
  if (speed && limit < byDiameter) {
    assumptions.push(
      `no limit for gap variation is stated: ${formatLimit(limit, lookup.system)} is allowed on the gauge circle of ${formatSi(readAt, 'length', lookup.system)} (${speed.words}), stricter than 0.001 of the diameter`,
    )
    beyondTable(speed, assumptions)
    return { limit, limitFrom: speed.words }
  }
  assumptions.push(
    'no limit for gap variation is stated: 0.001 of the diameter is allowed (0.001 in per inch of flange diameter, common practice)',
  )
  return { limit: byDiameter, limitFrom: '0.001 of the gauge circle, common practice' }
}

/** What offset is allowed: as stated; of a flexible coupling by its speed; else as much as the gap variation. Never more than the coupling is
 * rated for. */
export const offsetTolerance = (
  coupling: Block,
  gaps: Tolerance,
  lookup: Lookup,
  assumptions: string[],
): Tolerance =>
  ratedFor(offsetAllowed(coupling, gaps, lookup, assumptions), statedFact(coupling, 'coupling.max-offset'))

const offsetAllowed = (coupling: Block, gaps: Tolerance, lookup: Lookup, assumptions: string[]): Tolerance =>
  stated(coupling, 'offset') ?? usualOffset(coupling, gaps, lookup, assumptions)

function usualOffset(coupling: Block, gaps: Tolerance, lookup: Lookup, assumptions: string[]): Tolerance {
  const speed = bySpeed(coupling, lookup, assumptions)
  if (speed) {
    assumptions.push(
      `no limit for offset is stated: ${formatLimit(speed.offset, lookup.system)} is allowed (${speed.words})`,
    )
    beyondTable(speed, assumptions)
    return { limit: speed.offset, limitFrom: speed.words }
  }
  assumptions.push(
    `no limit for offset is stated: the same ${formatLimit(gaps.limit, lookup.system)} as for the gap variation is allowed (common practice, no source)`,
  )
  return { limit: gaps.limit, limitFrom: 'as the gap variation, common practice, no source' }
}

/** What would be allowed if the coupling stated no limits of its own. Undefined where its diameter is not known. */
export function usualTolerances(
  coupling: Block,
  lookup: Lookup,
): Readonly<Record<'gap-variation' | 'offset', Tolerance>> | undefined {
  try {
    const flange = statedFact(coupling, 'coupling.flange-diameter')
    const circle = gaugeCircle(coupling)
    if (flange === undefined || !circle) return undefined
    const gaps = usualGaps(coupling, { flange, readAt: circle.diameter }, lookup, [])
    return { 'gap-variation': gaps, offset: usualOffset(coupling, gaps, lookup, []) }
  } catch (error) {
    // A value that is unreadable or impossible has a finding of its own, at its place.
    if (error instanceof OutOfRange) return undefined
    throw error
  }
}
