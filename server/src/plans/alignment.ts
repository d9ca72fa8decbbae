import { type Closure, closure } from '../engineering/alignment/closure.ts'
import { fitFace } from '../engineering/alignment/face.ts'
import { onTheShaft } from '../engineering/alignment/feet.ts'
import { gapVariation } from '../engineering/alignment/gap-variation.ts'
import type { InPlanes } from '../engineering/alignment/planes.ts'
import { type OffsetBasis, poseFromFace } from '../engineering/alignment/pose.ts'
import { gather, type Reading } from '../engineering/alignment/readings.ts'
import { fitRim } from '../engineering/alignment/rim.ts'
import { gaugeStepToDecide, type Verdict } from '../engineering/alignment/verdict.ts'
import type { Lookup } from '../job/lookup.ts'
import { type Block, childrenOf, factOf } from '../job/model.ts'
import type { Uncertain } from '../quantity/uncertainty.ts'
import { type Asked, allUnseen, askedOf, type Predicted, type Steps } from './alignment-asked.ts'
import { type Doubt, doubtsAbout, type Withheld } from './alignment-doubts.ts'
import { type AlignmentFault, asFault, blaming, fault, WrongFact } from './alignment-fault.ts'
import type { Found } from './alignment-found.ts'
import { type Judged, judgeGaps, judgeOffset } from './alignment-judged.ts'
import { lastReading, movedAfter } from './alignment-moves.ts'
import { type Repeats, repeatsApart } from './alignment-repeats.ts'
import type { Way } from './choose-moves.ts'
import { remembered } from './remembered.ts'
import { said, Unreadable } from './said.ts'
import { type CorrectedFoot, left } from './steps.ts'

/** An error of the job file, and where it stands. */
export interface WrittenWrong {
  /** Id of the check. */
  readonly check: string
  /** Line and column, counted from 1. */
  readonly place: string
}

/** What a reading of the coupling says, and what each foot has to do. SI; signs as in the engineering floor: + up, + starboard. */
export interface Correction {
  readonly drive: string
  readonly reading: string
  readonly verdict: Verdict
  readonly gapVariation: Judged
  /** Absent when the offset is not known. */
  readonly offset?: Judged & { readonly parts: InPlanes<Uncertain> }
  readonly offsetBasis: OffsetBasis
  readonly slope: InPlanes<Uncertain>
  readonly closure: Closure
  readonly rimClosure?: Closure
  /** A place read more than once with values further apart than the gauge explains. */
  readonly repeats?: { readonly gaps?: Repeats; readonly offsets?: Repeats }
  /** The readings do not close, or differ where they were repeated: no moves are given from them. */
  readonly contradictory: boolean
  /** The machine no longer stands as was read. */
  readonly movedSince: boolean
  /** The last reading, where that is another. */
  readonly laterReading?: string
  readonly withheld?: Withheld
  readonly doubts: readonly Doubt[]
  /** What is written wrong in what the plan hangs on. */
  readonly errors?: readonly WrittenWrong[]
  /** What sets the heights of the feet, where the bed says. */
  readonly adjuster?: 'stud-and-nuts' | 'shims'
  readonly gaugeStep: number
  /** The gauge step that could decide, where this one cannot and a finer one could. */
  readonly decidedBy?: number
  readonly feet: readonly CorrectedFoot[]
  /** What would bring the machine inside, where the steps do not. */
  readonly ways: readonly Way[]
  /** Why there are no moves, when there are none. */
  readonly feetFault?: AlignmentFault
  readonly predicted?: Predicted
  readonly assumptions: readonly string[]
}

export type CorrectionOutcome =
  | { readonly ok: true; readonly value: Correction }
  | { readonly ok: false; readonly fault: AlignmentFault }

const capital = (text: string): string => text.replace(/^./, (c) => c.toUpperCase())

const worst = (a: Verdict, b: Verdict): Verdict =>
  a === 'outside' || b === 'outside'
    ? 'outside'
    : a === 'undecided' || b === 'undecided'
      ? 'undecided'
      : 'within'

/** Works out a reading of the coupling: verdict, slope, offset, and the correction of each foot. Never throws: what stands in the way is data. */
export const correctionOf = remembered((reading: Block, lookup: Lookup): CorrectionOutcome => {
  const outcome = orFault(() => work(reading, lookup))
  return 'ok' in outcome ? outcome : { ok: false, fault: outcome }
})

/** The correction without its steps, for this reason; the reason it has already comes first. */
export function withhold(c: Correction, why: Withheld): Correction {
  const { predicted: _, ...kept } = c
  return { ...kept, withheld: c.withheld ?? why, feet: c.feet.map(left) }
}

/** What the work gives, or what stands in its way. */
function orFault<T>(work: () => T): T | AlignmentFault {
  try {
    return work()
  } catch (error) {
    if (error instanceof Unreadable)
      return fault('unreadable', `${capital(error.message)}: put that right first.`)
    if (error instanceof WrongFact)
      return { ...fault('impossible', error.message), ...(error.at && { at: error.at }) }
    if (error instanceof RangeError)
      return fault(
        'impossible',
        'The reading, the coupling and the feet hold numbers that cannot be worked with: check each of them and its unit.',
      )
    throw error
  }
}

/** The only block of the kind that the drive has, or shares with others; a fault where it has several of its own. */
function theOne(
  reading: Block,
  kind: 'coupling' | 'bed',
  lookup: Lookup,
): Block | AlignmentFault | undefined {
  const own = reading.parent ? childrenOf(reading.parent, kind).length : 0
  return own > 1
    ? fault(
        kind === 'coupling' ? 'no-coupling' : 'no-feet',
        `The drive has ${own} ${kind} blocks: which one counts cannot be told. Keep the right one.`,
      )
    : lookup.near(kind)
}

function work(reading: Block, lookup: Lookup): CorrectionOutcome {
  const coupling = theOne(reading, 'coupling', lookup)
  const gaps = factOf(reading, 'reading.gaps')
  const gauge = factOf(reading, 'reading.gauge')
  if (!coupling)
    return {
      ok: false,
      fault: fault(
        'no-coupling',
        'The drive has no coupling block, so the gaps have no diameter to stand on.',
      ),
    }
  if ('words' in coupling) return { ok: false, fault: coupling }
  said(reading, 'reading.gaps')
  said(reading, 'reading.gauge')
  if (!gaps || !gauge)
    return {
      ok: false,
      fault: fault('no-gaps', 'The reading needs its gaps, and the smallest step of the gauge.'),
    }
  const flange = said(coupling, 'coupling.flange-diameter')
  const stated = said(coupling, 'coupling.gauge-diameter')
  const readAt = stated ?? flange
  if (readAt === undefined || flange === undefined)
    return { ok: false, fault: fault('no-diameter', 'The coupling needs its flange-diameter.') }

  const assumptions: string[] = []
  if (stated === undefined)
    assumptions.push(
      `the gaps were read at the rim of the flange, on ${lookup.show(flange, 'length')}: the coupling does not say its gauge-diameter`,
    )
  const gaugeStep = gauge.value
  const offsets = said(reading, 'reading.offsets')
  const inRepeats = {
    gaps: repeatsApart(gaps.value, gaugeStep),
    offsets: offsets && repeatsApart(offsets, gaugeStep),
  }
  const closureOf = (list: readonly Reading[], fact: 'reading.gaps' | 'reading.offsets'): Closure =>
    blaming(factOf(reading, fact), 'More than 60 places round the flange cannot be worked with.', () =>
      closure(gather(list, gaugeStep)),
    )
  const gapClosure = closureOf(gaps.value, 'reading.gaps')
  const rimClosure = offsets && closureOf(offsets, 'reading.offsets')
  const face = fitFace(gaps.value, { radius: readAt / 2, gaugeStep })
  if (!face.ok) return { ok: false, fault: asFault(face.problem) }

  const rim = offsets && fitRim(offsets, { gaugeStep })
  if (rim && !rim.ok) return { ok: false, fault: asFault(rim.problem, 'offsets') }
  const pilot = said(coupling, 'coupling.pilot') === 'yes'
  const pose = poseFromFace(face.value, rim?.value ?? (pilot ? 'pilot' : 'unknown'))
  if (!rim && pilot)
    assumptions.push(
      'the pilot of the coupling holds the faces concentric: no offset was read, it is taken as zero',
    )
  if (!rim && !pilot)
    assumptions.push(
      'the offset was not read: the moves take out the slope alone and leave the coupling centre where it is, so the machine is not shown to be aligned',
    )

  const gapsFound = judgeGaps(coupling, flange, readAt, gapVariation(face.value), lookup, assumptions)
  const offset = rim && judgeOffset(coupling, rim.value.offset, gapsFound, lookup, assumptions)
  const judged = offset ? worst(gapsFound.verdict, offset.verdict) : gapsFound.verdict
  const overall = judged === 'within' && pose.offsetBasis === 'unknown' ? 'undecided' : judged

  const byOffset = offset !== undefined && gapsFound.verdict !== 'undecided'
  const open = byOffset ? offset : gapsFound
  const readWith = byOffset && rim?.ok ? rim.value : face.value
  const decidedBy =
    open.verdict === 'undecided' ? gaugeStepToDecide(open.value, open.limit, readWith) : undefined

  const contradictory =
    gapClosure.state === 'open' ||
    rimClosure?.state === 'open' ||
    inRepeats.gaps !== undefined ||
    inRepeats.offsets !== undefined
  const movedSince = movedAfter(reading)

  const bed = theOne(reading, 'bed', lookup)
  const doubts = doubtsAbout(reading, bed && 'words' in bed ? undefined : bed)
  const found: Found = {
    face: face.value,
    rim: rim?.value,
    pose,
    gapVariation: gapsFound.value,
    offset: offset?.value,
    limits: { gapVariation: gapsFound.limit, offset: offset?.limit },
    target: onTheShaft,
  }
  // The verdict does not hang on the bed: what is wrong there stands in the way of the steps alone.
  const asked: Asked | AlignmentFault =
    bed && 'words' in bed ? bed : orFault(() => askedOf(bed, found, lookup, assumptions))
  assumptions.push(
    'the target is a straight line through the shaft: no droop of the parted shaft end, heat growth or movement afloat is allowed for',
  )
  const wanted = 'words' in asked ? [] : asked.feet
  const unsure = overall === 'undecided' && allUnseen(wanted)
  const withheld: Withheld | undefined = movedSince
    ? 'moved-since'
    : (doubts[0]?.type ?? (contradictory ? 'contradictory' : unsure ? 'unsure' : undefined))
  const unmoved = (asking: Asked): Steps => ({
    feet: asking.feet.map(left),
    predicted: asking.unmoved,
    ways: [],
  })
  const steps =
    'words' in asked
      ? asked
      : orFault(() => (withheld || overall === 'within' ? unmoved(asked) : asked.steps()))
  const feetFault = 'words' in steps ? steps : undefined
  const last = reading.parent && lastReading(reading.parent)
  const adjuster = 'words' in asked ? undefined : asked.adjuster
  return {
    ok: true,
    value: {
      drive: reading.parent?.name ?? '',
      reading: reading.name ?? '',
      verdict: overall,
      gapVariation: gapsFound,
      ...(offset && { offset }),
      offsetBasis: pose.offsetBasis,
      slope: face.value.slope,
      closure: gapClosure,
      ...(rimClosure && { rimClosure }),
      gaugeStep,
      ...(decidedBy !== undefined && { decidedBy }),
      feet: 'words' in steps ? [] : steps.feet,
      ...((inRepeats.gaps || inRepeats.offsets) && {
        repeats: {
          ...(inRepeats.gaps && { gaps: inRepeats.gaps }),
          ...(inRepeats.offsets && { offsets: inRepeats.offsets }),
        },
      }),
      contradictory,
      movedSince,
      doubts,
      ...(last && last !== reading && { laterReading: last.name ?? '' }),
      ...(withheld && { withheld }),
      ...(adjuster && { adjuster }),
      ...(feetFault && { feetFault }),
      ...(!('words' in steps) && !withheld && { predicted: steps.predicted }),
      ways: 'words' in steps ? [] : steps.ways,
      assumptions,
    },
  }
}
