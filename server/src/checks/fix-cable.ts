import { awgArea } from '../engineering/electrical/awg.ts'
import { reaches } from '../engineering/electrical/guard.ts'
import { iec60228 } from '../engineering/electrical/iec-60228.ts'
import type { Lookup } from '../job/lookup.ts'
import { type Block, factOf } from '../job/model.ts'
import { sectionOf } from '../plans/cable-ampacity.ts'
import { type CableLoading, cableLoading } from '../plans/cable-loading.ts'
import { fittingRating, isProtected, needsProtection } from '../plans/cable-protection.ts'
import type { FixGround } from './check.ts'
import type { Fix } from './fix.ts'
import { newValue } from './fix-text.ts'

/** A conductor that is made: its section in m², as it is written and as it is said. */
interface Size {
  readonly area: number
  readonly written: string
  readonly said: string
}

/** The sections of IEC 60228, as the table of resistances has them. */
const metric: readonly Size[] = iec60228.rows.map(({ mm2 }) => ({
  area: mm2 * 1e-6,
  written: `${mm2} mm2`,
  said: `${mm2} mm²`,
}))

/** Even gauges from 18 to 2, 1, then 1/0 to 4/0: the rows of 33 CFR 183.425 table 5. */
const gauges: readonly Size[] = [18, 16, 14, 12, 10, 8, 6, 4, 2, 1, 0, -1, -2, -3].map((n) => {
  const name = `${n > 0 ? n : `${1 - n}/0`} AWG`
  return { area: awgArea(n), written: name, said: name }
})

/** The cable with a conductor of another section, all else as it is. */
function withConductor(cable: Block, area: number): Block | undefined {
  const conductor = factOf(cable, 'cable.conductor')
  return (
    conductor && { ...cable, facts: new Map(cable.facts).set('conductor', { ...conductor, value: area }) }
  )
}

const passes = ({ carries, current, drop, dropLimit }: CableLoading): boolean =>
  carries !== undefined &&
  reaches(carries, current) &&
  (drop === undefined || dropLimit === undefined || reaches(dropLimit, drop))

/** The smallest conductor that is made, of the system the cable is in, that carries the current and keeps the drop, and where the cable has a fuse
 * or needs one, for which there is one: each tried in the plan. */
function smallestSize(cable: Block, lookup: Lookup): Size | undefined {
  const now = factOf(cable, 'cable.conductor')?.value
  if (now === undefined) return undefined
  const fused = isProtected(cable, lookup) || needsProtection(cable, lookup)
  const made = sectionOf(now).system === 'awg' ? gauges : metric
  return made.find(({ area }) => {
    const tried = area > now ? withConductor(cable, area) : undefined
    const outcome = tried && cableLoading(tried, lookup)
    if (!outcome?.ok || !passes(outcome.value)) return false
    return !fused || fittingRating(tried, lookup) !== undefined
  })
}

/** A larger conductor for the cable, where it says its conductor itself. */
export function largerConductor({ block, lookup }: FixGround): readonly Fix[] {
  const conductor = block && factOf(block, 'cable.conductor')
  if (!conductor || conductor.origin || !lookup) return []
  const size = smallestSize(block, lookup)
  return size
    ? [
        {
          title: `Use ${size.said}`,
          edits: [newValue(block.section, conductor.node, size.written)],
          preferred: true,
        },
      ]
    : []
}

/** The fitting rating for the fuse at the finding, where it says its rating itself. */
export function fitRating({ block, lookup }: FixGround): readonly Fix[] {
  const rating = block && factOf(block, 'protection.rating')
  const protects = block && factOf(block, 'protection.protects')
  if (!rating || rating.origin || !protects || !lookup) return []
  const amps = fittingRating(lookup.referred('protects'), lookup)
  return amps === undefined
    ? []
    : [
        {
          title: `Use ${amps} A`,
          edits: [newValue(block.section, rating.node, `${amps} A`)],
          preferred: true,
        },
      ]
}
