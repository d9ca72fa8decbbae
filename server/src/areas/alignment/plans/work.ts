import { memoizeByIdentity } from '../../../common/memoize-by-identity.ts'
import { nutTravel } from '../../../engineering/adjusters.ts'
import { packChanges, passesOf } from '../../../engineering/alignment/passes.ts'
import { isFormattedAsZero } from '../../../quantity/format-measures.ts'
import type { UnitSystem } from '../../../quantity/kinds.ts'
import type { Correction } from './correction.ts'
import type { CorrectedFoot } from './steps.ts'

/** What is done at one station at a time: its feet go by this much, m, + up. */
interface Visit {
  readonly feet: readonly CorrectedFoot[]
  readonly by: number
}

/** How the feet get their heights, all fastenings slack meanwhile. */
export interface Work {
  /** Passes of the lower nuts; empty with shims. */
  readonly passes: readonly (readonly Visit[])[]
  /** Changes of packs, `lift`: how far the feet are lifted for it, m; empty with nuts. */
  readonly packs: readonly (Visit & { readonly lift: number })[]
  /** How far the fastening of each foot is slackened, m, in the order of the feet; whole flats where the thread is known. */
  readonly slack: readonly number[]
  /** What slack is said in, m: a flat, or half a millimetre. */
  readonly slackStep: number
  /** Greatest angle along the shaft, against the start, rad. */
  readonly tilt: number
  /** How far one foot of a station may go before the next follows, m; 0 with shims. */
  readonly inTurn: number
  /** A flat of the lower nuts, m, where they are turned by flats. */
  readonly flat?: number
}

/** A visit to a station is two flats at most; its nuts are turned a flat at a time. Common practice, no source. */
const flatsInVisit = 2

/** The same where the thread is not known: m, and the length that heights are set to. Common practice, no source. */
const byHand = {
  metric: { most: 5e-4, uneven: 2.5e-4, step: 1e-4 },
  inch: { most: 5.08e-4, uneven: 2.54e-4, step: 1.27e-4 },
} as const

/** A shim slides in under a foot that stands this much (m) above it. Common practice, no source. */
const toSlideIn = 1e-3

/** A washer is about twice as wide as its stud (ISO 7089, from memory), so its radius is the stud's diameter; of a stud that is not known, m. */
const washerRadius = 0.024

/** Slack is said in whole flats, else in this, m; and so is how far an end is lifted. */
const roughStep = { metric: 5e-4, inch: 5.08e-4 } as const

const upTo = (length: number, step: number): number => Math.max(1, Math.ceil(length / step - 1e-6)) * step

/** How the feet of a plan get their heights; undefined where no height is to be set. */
export const workOf = (c: Correction, system: UnitSystem): Work | undefined => works[system](c)

const works = {
  metric: memoizeByIdentity((c: Correction) => worked(c, 'metric')),
  inch: memoizeByIdentity((c: Correction) => worked(c, 'inch')),
}

function worked(c: Correction, system: UnitSystem): Work | undefined {
  const raised = c.feet.some(({ step, moved }) => step.by !== 'none' && !isFormattedAsZero(moved, system))
  if (c.withheld || c.verdict === 'within' || !raised) return undefined
  const lifts = c.feet.map(({ x, y, moved }) => ({ x, y, by: moved }))
  const { thread } = c.hardware ?? {}
  const edge = thread?.diameter ?? washerRadius
  const named = <T extends { readonly feet: readonly number[] }>(visit: T) => ({
    ...visit,
    feet: visit.feet.flatMap((i) => c.feet[i] ?? []),
  })
  if (c.adjuster === 'shims') {
    const { visits, clearance, tilt } = packChanges(lifts, { gap: toSlideIn, step: roughStep[system], edge })
    return {
      passes: [],
      packs: visits.map(named),
      // Half a step more, so that the lift as it is said never reaches the heads of the bolts.
      slack: clearance.map((length) => upTo(length + roughStep[system] / 2, roughStep[system])),
      slackStep: roughStep[system],
      tilt,
      inTurn: 0,
    }
  }
  const byNut = c.feet.some(({ step }) => step.by === 'nut') && thread
  const flat = byNut ? nutTravel({ turns: 0, flats: 1 }, thread.pitch) : undefined
  const limits =
    flat === undefined
      ? byHand[system]
      : { most: flatsInVisit * flat, uneven: flat, step: flat / (c.hardware?.partsOfFlat ?? 1) }
  const { passes, clearance, tilt } = passesOf(lifts, { ...limits, edge })
  return {
    passes: passes.map((visits) => visits.map(named)),
    packs: [],
    slack: clearance.map((length) => upTo(length, flat ?? roughStep[system])),
    slackStep: flat ?? roughStep[system],
    tilt,
    inTurn: limits.uneven,
    ...(flat !== undefined && { flat }),
  }
}
