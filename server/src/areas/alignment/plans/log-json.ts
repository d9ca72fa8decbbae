import type { Hypothesis } from '../../../engineering/alignment/hypothesis.ts'
import type { Swapped } from '../../../engineering/alignment/mirrors.ts'
import type { LogEntry } from './log.ts'
import { both, type Figure, figure, round } from './plan-json.ts'
import type { Comparison, FlangeMisalignment, OtherShape } from './reading-comparison.ts'

interface Parts {
  readonly vertical: Figure
  readonly horizontal: Figure
}

/** How the flange stands: gap at top less bottom and at starboard less port; offset of the machine flange. */
interface FlangeMisalignmentJson {
  readonly opening_mm: Parts
  readonly offset_mm: Parts | null
}

interface ExplanationJson {
  readonly type: Hypothesis['type']
  readonly feet?: readonly string[]
  /** Share of the way that the machine came. */
  readonly share?: number
  /** The gauge-diameter that the figures fit. */
  readonly gaugeDiameter_mm?: number
  /** The pitch of the thread that the figures fit. */
  readonly pitch_mm?: number
  /** In which reading places are swapped, or signs reversed. */
  readonly swapped?: Swapped
  /** Which way places are counted a quarter off. */
  readonly way?: 'clockwise' | 'counter-clockwise'
  /** The reading that the figures are a copy of. */
  readonly from?: string
  /** What was made at the wrong end. */
  readonly made?: 'all' | 'heights'
}

interface ComparedJson {
  readonly type: 'compared'
  readonly since: string
  readonly predicted: FlangeMisalignmentJson
  readonly found: FlangeMisalignmentJson
  readonly chiSquare: number
  readonly degreesOfFreedom: number
  readonly noise: boolean
  readonly explanations: readonly ExplanationJson[]
}

/** A reading in the log of a plan. */
export interface LogJson {
  readonly reading: string
  readonly taken: string | null
  readonly afloat: boolean | null
  readonly hot: boolean | null
  /** Why it could not be worked out. */
  readonly fault: string | null
  readonly verdict: 'within' | 'outside' | 'undecided' | null
  readonly contradictory: boolean
  readonly gapVariation_mm: (Figure & { readonly limit: number }) | null
  readonly offset_mm: (Parts & { readonly limit: number }) | null
  readonly slope_mrad: Parts | null
  readonly movedAfter: readonly { readonly foot: string; readonly move: string }[]
  readonly plannedAfter: readonly { readonly foot: string; readonly move: string }[]
  readonly against: ComparedJson | { readonly type: OtherShape['type']; readonly since: string } | null
  /** What an earlier reading put in doubt and this one does not settle. */
  readonly stillOpen: {
    readonly reading: string
    readonly since: string
    readonly explanations: readonly ExplanationJson[]
  } | null
}

const flangeMisalignmentJson = ({ opening, offset }: FlangeMisalignment): FlangeMisalignmentJson => ({
  opening_mm: both(opening),
  offset_mm: offset ? both(offset) : null,
})

const explanation = (of: Hypothesis, { readAt, thread }: Comparison): ExplanationJson => ({
  type: of.type,
  ...('feet' in of && { feet: of.feet }),
  ...('share' in of && { share: round(of.share) }),
  ...(of.type === 'other-gauge-diameter' && { gaugeDiameter_mm: round(of.factor * readAt.diameter * 1000) }),
  ...(of.type === 'other-pitch' && thread && { pitch_mm: round(of.factor * thread.pitch * 1000) }),
  ...('swapped' in of && { swapped: of.swapped }),
  ...('way' in of && { way: of.way }),
  ...('from' in of && { from: of.from }),
  ...('made' in of && { made: of.made }),
})

const explanationsOf = (of: Comparison): readonly ExplanationJson[] =>
  of.mismatch.explanations.map(({ hypothesis }) => explanation(hypothesis, of))

function compared(against: NonNullable<LogEntry['against']>): NonNullable<LogJson['against']> {
  if (against.type !== 'compared') return { type: against.type, since: against.since }
  const { since, predicted, found, mismatch } = against
  return {
    type: 'compared',
    since,
    predicted: flangeMisalignmentJson(predicted),
    found: flangeMisalignmentJson(found),
    chiSquare: round(mismatch.chiSquare),
    degreesOfFreedom: mismatch.degreesOfFreedom,
    noise: mismatch.noise,
    explanations: explanationsOf(against),
  }
}

/** The log of a drive, oldest reading first; lengths in mm, slopes in mrad, uncertainties expanded (k = 2). */
export const logJson = (log: readonly LogEntry[]): readonly LogJson[] =>
  log.map(({ name, taken, afloat, hot, outcome, moved, planned, against, stillOpen }) => {
    const c = outcome.ok ? outcome.value : undefined
    return {
      reading: name,
      taken: taken ?? null,
      afloat: afloat ?? null,
      hot: hot ?? null,
      fault: outcome.ok ? null : outcome.fault.words,
      verdict: c?.verdict ?? null,
      contradictory: c?.contradictory ?? false,
      gapVariation_mm: c
        ? { ...figure(c.gapVariation.value), limit: round(c.gapVariation.limit * 1000) }
        : null,
      offset_mm: c?.offset ? { ...both(c.offset.parts), limit: round(c.offset.limit * 1000) } : null,
      slope_mrad: c ? both(c.slope) : null,
      movedAfter: moved.map(({ foot, words }) => ({ foot, move: words })),
      plannedAfter: planned.map(({ foot, words }) => ({ foot, move: words })),
      against: against ? compared(against) : null,
      stillOpen: stillOpen
        ? { reading: stillOpen.at, since: stillOpen.since, explanations: explanationsOf(stillOpen) }
        : null,
    }
  })
