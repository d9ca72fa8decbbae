import { type Closure, closure } from '../engineering/alignment/closure.ts'
import { fitFace } from '../engineering/alignment/face.ts'
import { type FootCorrection, footCorrections } from '../engineering/alignment/feet.ts'
import { gapVariation } from '../engineering/alignment/gap-variation.ts'
import type { InPlanes } from '../engineering/alignment/planes.ts'
import { type OffsetBasis, poseFromFace } from '../engineering/alignment/pose.ts'
import { gather, type Reading } from '../engineering/alignment/readings.ts'
import { movedFace, movedRim, rigidMachine } from '../engineering/alignment/rigid-move.ts'
import { fitRim } from '../engineering/alignment/rim.ts'
import { gaugeStepToDecide, type Verdict } from '../engineering/alignment/verdict.ts'
import type { Lookup } from '../job/lookup.ts'
import { type Block, childrenOf, factOf } from '../job/model.ts'
import { exactly, type Uncertain } from '../quantity/uncertainty.ts'
import { type AlignmentFault, asFault, blaming, fault, WrongFact } from './alignment-fault.ts'
import { feetOf } from './alignment-feet.ts'
import { type Judged, judgeGaps, judgeOffset } from './alignment-judged.ts'
import { lastReading, movedAfter } from './alignment-moves.ts'
import { type Repeats, repeatsApart } from './alignment-repeats.ts'
import { remembered } from './remembered.ts'
import { said, Unreadable } from './said.ts'
import { type CorrectedFoot, left, stepsFor, unseen } from './steps.ts'

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
  /** Why no steps are given though the machine is not within its limits: `unsure` when nothing is proven and U is larger than every move. */
  readonly withheld?: 'moved-since' | 'contradictory' | 'unsure'
  /** What sets the heights of the feet, where the bed says. */
  readonly adjuster?: 'stud-and-nuts' | 'shims'
  readonly gaugeStep: number
  /** The gauge step that could decide, where this one cannot and a finer one could. */
  readonly decidedBy?: number
  readonly feet: readonly CorrectedFoot[]
  /** Why there are no moves, when there are none. */
  readonly feetFault?: AlignmentFault
  /** What the next reading should show after the steps; `inside` when that is within both limits. */
  readonly predicted?: {
    readonly gapVariation: Uncertain
    readonly offset?: InPlanes<Uncertain>
    readonly inside: boolean
  }
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
  try {
    return work(reading, lookup)
  } catch (error) {
    if (error instanceof Unreadable)
      return { ok: false, fault: fault('unreadable', `${capital(error.message)}: put that right first.`) }
    if (error instanceof WrongFact)
      return {
        ok: false,
        fault: { ...fault('impossible', error.message), ...(error.at && { at: error.at }) },
      }
    if (error instanceof RangeError)
      return {
        ok: false,
        fault: fault(
          'impossible',
          'The reading, the coupling and the feet hold numbers that cannot be worked with: check each of them and its unit.',
        ),
      }
    throw error
  }
})

function work(reading: Block, lookup: Lookup): CorrectionOutcome {
  const coupling = lookup.near('coupling')
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

  const bed = lookup.near('bed')
  const moves = feetOf(bed, assumptions)
  const corrected = moves.ok ? footCorrections(pose, moves.feet) : undefined
  const machine = rigidMachine(moves.ok ? moves.feet : [])
  assumptions.push(
    'the target is a straight line through the shaft: no droop of the parted shaft end, heat growth or movement afloat is allowed for',
  )

  /** What the next reading should show, and how much of its limits that uses. */
  const outcomeOf = (feet: readonly CorrectedFoot[]): Outcome | AlignmentFault => {
    if (!machine.ok) return asFault(machine.problem)
    const moved = machine.value(feet.map(asMoved))
    const gap = gapVariation(movedFace(face.value, moved))
    const flangeAt = rim?.ok ? movedRim(rim.value, moved).offset : undefined
    const away = flangeAt && Math.hypot(flangeAt.vertical.value, flangeAt.horizontal.value)
    const used = Math.max(gap.value / gapsFound.limit, away !== undefined && offset ? away / offset.limit : 0)
    return { gapVariation: gap, ...(flangeAt && { offset: flangeAt }), used }
  }
  const wanted = corrected?.ok ? corrected.value.feet : []
  if (bed) refuseFarMoves(bed, wanted, lookup)
  const unsure = overall === 'undecided' && allUnseen(wanted)
  const withheld = movedSince
    ? 'moved-since'
    : contradictory
      ? 'contradictory'
      : unsure
        ? 'unsure'
        : undefined
  const feet =
    withheld || overall === 'within' || !moves.ok
      ? wanted.map(left)
      : blaming(
          bed?.facts.get(moves.adjuster.by === 'shims' ? 'shims' : 'thread'),
          'The steps cannot be worked out: the pitch of the thread, or a shim, has a size that is not made.',
          () =>
            stepsFor(wanted, moves.adjuster, (chosen) => {
              const result = outcomeOf(chosen)
              return 'used' in result ? result.used : Number.POSITIVE_INFINITY
            }),
        )
  const outcome = feet.length > 0 ? outcomeOf(feet) : undefined
  const feetFault = !moves.ok
    ? moves.fault
    : corrected?.ok === false
      ? asFault(corrected.problem)
      : outcome && 'words' in outcome
        ? outcome
        : undefined
  const predicted = outcome && 'used' in outcome && !withheld ? foreseen(outcome) : undefined
  const last = reading.parent && lastReading(reading.parent)
  const adjuster = bed && said(bed, 'bed.adjuster')
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
      feet: feetFault ? [] : feet,
      ...((inRepeats.gaps || inRepeats.offsets) && {
        repeats: {
          ...(inRepeats.gaps && { gaps: inRepeats.gaps }),
          ...(inRepeats.offsets && { offsets: inRepeats.offsets }),
        },
      }),
      contradictory,
      movedSince,
      ...(last && last !== reading && { laterReading: last.name ?? '' }),
      ...(withheld && { withheld }),
      ...(adjuster && { adjuster }),
      ...(feetFault && { feetFault }),
      ...(predicted && { predicted }),
      assumptions,
    },
  }
}

/** A foot that would have to go further than this (m) is miswritten, or the gaps are. */
const farthestMove = 1

function refuseFarMoves(bed: Block, feet: readonly FootCorrection[], lookup: Lookup): void {
  for (const { name, vertical, horizontal } of feet) {
    const far = Math.max(Math.abs(vertical.value), Math.abs(horizontal.value))
    if (far > farthestMove)
      throw new WrongFact(
        `Foot ${name} would have to move ${lookup.show(far, 'length')}: its from-coupling, or one of the gaps, is wrong.`,
        childrenOf(bed, 'foot')
          .find((foot) => foot.name === name)
          ?.facts.get('from-coupling'),
      )
  }
}

/** Whether U is larger than the move at every foot, up and sideways. */
export const allUnseen = (feet: readonly FootCorrection[]): boolean =>
  feet.length > 0 && feet.every(({ vertical, horizontal }) => unseen(vertical) && unseen(horizontal))

interface Outcome {
  readonly gapVariation: Uncertain
  readonly offset?: InPlanes<Uncertain>
  /** Share of the limits that is used up: 1 is on a limit. */
  readonly used: number
}

const foreseen = ({ used, ...shown }: Outcome): NonNullable<Correction['predicted']> => ({
  ...shown,
  inside: used <= 1 + 1e-9,
})

/** The step as the foot's own move: sideways the whole correction, since it is not tied to flats. */
const asMoved = (foot: CorrectedFoot): InPlanes<Uncertain> => ({
  vertical: exactly(foot.moved),
  horizontal: exactly(foot.step.by === 'none' ? 0 : foot.horizontal.value),
})
