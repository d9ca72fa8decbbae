import { assumedGapLimit } from '../engineering/alignment/gap-variation.ts'
import { type SpeedLimits, speedLimits } from '../engineering/alignment/speed-limits.ts'
import type { Lookup } from '../job/lookup.ts'
import { type Block, factOf, type Value } from '../job/model.ts'
import { formatNumber } from '../quantity/format.ts'
import { said } from './said.ts'

/** What is allowed, m, and where that is from: `the maker`, `the job file`, or the rule that was assumed. */
export interface Tolerance {
  readonly limit: number
  readonly limitFrom: string
}

const statedBy = (value: Value<unknown>): string =>
  value.provenance?.words.includes('maker') ? 'the maker' : 'the job file'

/** The upper end that the coupling states itself. */
function stated(coupling: Block, of: 'gap-variation' | 'offset'): Tolerance | undefined {
  said(coupling, `coupling.${of}`)
  const fact = factOf(coupling, `coupling.${of}`)
  return fact?.value.high === undefined ? undefined : { limit: fact.value.high, limitFrom: statedBy(fact) }
}

/** What the speed of a flexible coupling allows. */
interface BySpeed extends SpeedLimits {
  readonly words: string
}

/** Undefined for a coupling that is not flexible, or whose speed is not known. A coupling turns with the shaft, so behind a gear at the speed
 * of the motor over the ratio. */
function bySpeed(coupling: Block, lookup: Lookup): BySpeed | undefined {
  if (said(coupling, 'coupling.kind') !== 'flexible') return undefined
  const motor = said(lookup.near('motor'), 'motor.speed')
  if (motor === undefined) return undefined
  const ratio = said(lookup.near('gear'), 'gear.ratio') ?? 1
  const speed = (motor * 60) / (2 * Math.PI) / ratio
  if (speed < 1 || speed > 6000) return undefined
  return {
    ...speedLimits(speed),
    words: `short flexible couplings at ${formatNumber(speed, 4)} rpm, general industry table`,
  }
}

const noSpeed = (coupling: Block): string | undefined =>
  said(coupling, 'coupling.kind') === 'flexible'
    ? 'the speed of the flexible coupling is not known, or beyond the table, so nothing is allowed or refused by its speed'
    : undefined

/** What gap variation is allowed on the circle the gauge goes in on (`readAt`, m): as stated; else by the diameter of the flange; of a
 * flexible coupling by its speed too, and the stricter of the two. */
export function gapTolerance(
  coupling: Block,
  { flange, readAt }: { readonly flange: number; readonly readAt: number },
  lookup: Lookup,
  assumptions: string[],
): Tolerance {
  const own = stated(coupling, 'gap-variation')
  if (own) {
    if (Math.abs(readAt - flange) > 1e-6)
      assumptions.push(
        `the gap variation allowed holds where the gauge goes in, on ${lookup.show(readAt, 'length')}`,
      )
    return own
  }
  // The rule is of the flange; on a smaller circle the same slope shows less, so the limit shrinks with it.
  const byDiameter = assumedGapLimit(flange) * (readAt / flange)
  const speed = bySpeed(coupling, lookup)
  const missing = speed ? undefined : noSpeed(coupling)
  if (missing) assumptions.push(missing)
  if (speed && speed.gapPerDiameter * readAt < byDiameter) {
    assumptions.push(
      `no gap variation is stated: ${formatNumber(speed.gapPerDiameter * 1e5, 2)} mm on 100 mm of diameter is allowed (${speed.words}), stricter than 0.001 of the diameter`,
    )
    return { limit: speed.gapPerDiameter * readAt, limitFrom: speed.words }
  }
  assumptions.push(
    'no gap variation is stated: 0.001 of the diameter is allowed (0.001 in per inch of flange diameter, common practice)',
  )
  return { limit: byDiameter, limitFrom: '0.001 of the circle the gauge goes in on, common practice' }
}

/** What offset is allowed: as stated; of a flexible coupling by its speed; else as much as the gap variation. */
export function offsetTolerance(
  coupling: Block,
  gaps: Tolerance,
  lookup: Lookup,
  assumptions: string[],
): Tolerance {
  const own = stated(coupling, 'offset')
  if (own) return own
  const speed = bySpeed(coupling, lookup)
  if (speed) {
    assumptions.push(
      `no offset is stated: ${lookup.show(speed.offset, 'length')} is allowed (${speed.words})`,
    )
    return { limit: speed.offset, limitFrom: speed.words }
  }
  assumptions.push(
    `no offset is stated: it is held against the same ${lookup.show(gaps.limit, 'length')} as the gap variation (common practice, no source)`,
  )
  return { limit: gaps.limit, limitFrom: 'as the gap variation, common practice, no source' }
}
