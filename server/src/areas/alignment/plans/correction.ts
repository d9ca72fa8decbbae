import { capital } from '../../../common/capital.ts'
import type { Closure } from '../../../engineering/alignment/closure.ts'
import { gapVariation } from '../../../engineering/alignment/gap-variation.ts'
import { gaugeStepMade } from '../../../engineering/alignment/gauge-steps.ts'
import type { InPlanes } from '../../../engineering/alignment/planes.ts'
import type { OffsetBasis } from '../../../engineering/alignment/pose.ts'
import { againstTarget } from '../../../engineering/alignment/target.ts'
import { gaugeStepToDecide } from '../../../engineering/alignment/verdict.ts'
import { type Block, childrenOf, factOf } from '../../../job/model.ts'
import type { Verdict } from '../../../quantity/conformity.ts'
import { OutOfRange } from '../../../quantity/out-of-range.ts'
import type { Uncertain } from '../../../quantity/uncertainty.ts'
import { idOf } from '../../../store/block-by-id.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'
import { markedAssumed } from '../../common/marked-assumed.ts'
import { failed, ok } from '../../common/outcome.ts'
import { statedFact, Unreadable } from '../../common/stated-fact.ts'
import type { AlignmentState } from './alignment-state.ts'
import type { WayInside } from './choose-moves.ts'
import { type Doubt, doubtsAbout, type Withheld } from './doubts.ts'
import { type AlignmentFault, type AlignmentOutcome, fault, WrongFact } from './fault.ts'
import { feetOf } from './feet.ts'
import {
  allBelowUncertainty,
  type CorrectionSteps,
  type FootCorrectionPlan,
  footCorrectionPlan,
  type Predicted,
  stepsOf,
} from './foot-correction-plan.ts'
import { formatAssumedCircle, gaugeCircle } from './gauge-circle.ts'
import { type Hardware, hardwareOf } from './hardware.ts'
import { type JudgedFigure, judgeGaps, judgeOffset } from './judged.ts'
import { type SoftFound, softUpTo } from './lifts.ts'
import { lastReading, movedAfter } from './moves.ts'
import { hasOffset, pilotDoubt } from './pilot.ts'
import { type PlannedMove, plannedFrom } from './planned-move.ts'
import { measuredAlignment, type RoundFact } from './readings.ts'
import type { Repeats } from './repeats.ts'
import { roomAssumed } from './room.ts'
import { isFarOff } from './rough.ts'
import { softDoubt } from './soft-foot-words.ts'
import { type CorrectedFoot, unmovedFoot } from './steps.ts'
import { type StatedTarget, targetOf } from './target.ts'

/** An error of the job file, and where it stands. */
export interface WrittenWrong {
  /** Id of the check. */
  readonly check: string
  /** Line and column, counted from 1. */
  readonly place: string
}

/** A finding that is no error, and that no steps are given beside. */
export interface Awaited extends WrittenWrong {
  readonly message: string
  /** What to do about it. */
  readonly todo: string
}

/** A finding that a concession accepts. */
export interface Accepted extends WrittenWrong {
  readonly message: string
  readonly by: string
  readonly until: string
  /** Its last day has passed. */
  readonly isPast?: true
}

/** What a reading of the coupling says, and what each foot has to do. SI; signs as in the engineering floor: + up, + starboard. */
export interface Correction {
  readonly drive: string
  readonly reading: string
  readonly verdict: Verdict
  /** Judged against the target. */
  readonly gapVariation: JudgedFigure
  /** Judged against the target; `parts` as read. Absent when the offset is not known. */
  readonly offset?: JudgedFigure & { readonly parts: InPlanes<Uncertain> }
  /** The facts that face and rim were read into. */
  readonly readBy: { readonly face: RoundFact; readonly rim?: RoundFact }
  /** Where the machine is to stand, where that is not a straight line through the shaft. */
  readonly target?: StatedTarget
  readonly soft?: SoftFound
  /** What turned with the flange, total indicator reading, m; where the flange was turned. */
  readonly runOut?: { readonly face?: Uncertain; readonly rim?: Uncertain }
  readonly offsetBasis: OffsetBasis
  readonly slope: InPlanes<Uncertain>
  readonly closure: Closure
  readonly rimClosure?: Closure
  /** A place read more than once with values further apart than the gauge explains. */
  readonly repeats?: { readonly gaps?: Repeats; readonly offsets?: Repeats }
  /** The readings do not close, or differ where they were repeated: no moves are given from them. */
  readonly contradictory: boolean
  /** The machine was at working heat. */
  readonly hot: boolean
  /** Whether the boat was afloat, where the reading says. */
  readonly afloat?: boolean
  /** The machine no longer stands as was read. */
  readonly movedSince: boolean
  /** The last reading, where that is another. */
  readonly laterReading?: string
  readonly withheld?: Withheld
  /** Moves written after this reading that do not say that they were made. */
  readonly planned: readonly PlannedMove[]
  /** What the log shows of the moves before, where they had another effect than they should. */
  readonly moveDiscrepancy?: string
  readonly doubts: readonly Doubt[]
  /** What is written wrong in what the plan depends on. */
  readonly errors?: readonly WrittenWrong[]
  /** What else was found in it that has to be fixed or accepted before there are steps. */
  readonly findings?: readonly Awaited[]
  /** What was found in the drive and somebody answers for. */
  readonly accepted?: readonly Accepted[]
  /** What sets the heights of the feet, where the bed says. */
  readonly adjuster?: 'stud-and-nuts' | 'shims'
  /** Nuts and bolts of the bed and the coupling, where the feet are known. */
  readonly hardware?: Hardware
  readonly gaugeStep: number
  /** Diameter (m) on which the gap variation is judged. */
  readonly gaugeDiameter: number
  /** Step (m) of a gauge that is made and could decide, where this one cannot. */
  readonly decidedBy?: number
  readonly feet: readonly CorrectedFoot[]
  /** What would bring the machine inside, where the steps do not. */
  readonly ways: readonly (readonly WayInside[])[]
  /** There were more ways to set the feet than were tried. */
  readonly untried: boolean
  /** Why there are no moves, when there are none. */
  readonly feetFault?: AlignmentFault
  readonly predicted?: Predicted
  /** What the verdict and the corrections rest on. */
  readonly assumptions: readonly string[]
  /** What the steps rest on besides. */
  readonly stepAssumptions: readonly string[]
}

export type CorrectionOutcome = AlignmentOutcome<Correction>

const untried = 'not all ways to set these feet were tried: there may be better moves'

const worst = (a: Verdict, b: Verdict): Verdict =>
  a === 'outside' || b === 'outside'
    ? 'outside'
    : a === 'undecided' || b === 'undecided'
      ? 'undecided'
      : 'within'

const outcomeOf =
  (softAccepted: boolean) =>
  (reading: Block, lookup: Lookup): CorrectionOutcome =>
    orFault(() => work(reading, lookup, softAccepted))

/** Works out a reading of the coupling: verdict, slope, offset, and the correction of each foot. Never throws: what stands in the way is data. */
export const correctionOf = plan(outcomeOf(false))

/** The same where a concession accepts that a foot is soft: the doubt is said, and withholds no steps. */
export const correctionOnSoftFeet = plan(outcomeOf(true))

/** The correction without its steps, for this reason; the reason it has already comes first, but for rough alignment, which is work as well. */
export function withhold(c: Correction, why: Withheld): Correction {
  const { predicted: _, ...kept } = c
  const before = c.withheld === 'far-off' ? undefined : c.withheld
  return {
    ...kept,
    withheld: before ?? why,
    feet: c.feet.map(unmovedFoot),
    ways: [],
    untried: false,
    stepAssumptions: [],
  }
}

/** What the work gives, or what stands in its way. */
function orFault<T>(work: () => AlignmentOutcome<T>): AlignmentOutcome<T> {
  try {
    return work()
  } catch (error) {
    if (error instanceof Unreadable)
      return failed(fault('unreadable', `${capital(error.message)}. ${error.todo}`))
    if (error instanceof WrongFact)
      return failed({ ...fault('impossible', error.message), ...(error.at && { at: error.at }) })
    if (error instanceof OutOfRange)
      return failed(
        fault(
          'impossible',
          'The numbers of the reading, the coupling and the feet cannot be used together. Check each of them and its unit.',
        ),
      )
    throw error
  }
}

/** The only block of the kind that the drive has, or shares with others; a fault where it has several of its own. */
function onlyBlock(
  reading: Block,
  kind: 'coupling' | 'bed',
  lookup: Lookup,
): AlignmentOutcome<Block | undefined> {
  const own = reading.parent ? childrenOf(reading.parent, kind).length : 0
  return own > 1
    ? failed(
        fault(
          kind === 'coupling' ? 'no-coupling' : 'no-feet',
          `The drive has ${own} ${kind} blocks, so it is not clear which counts. Keep the right one.`,
        ),
      )
    : ok(lookup.near(kind))
}

function work(reading: Block, lookup: Lookup, softAccepted: boolean): CorrectionOutcome {
  const oneCoupling = onlyBlock(reading, 'coupling', lookup)
  if (!oneCoupling.ok) return oneCoupling
  const coupling = oneCoupling.value
  if (!coupling)
    return failed(
      fault('no-coupling', 'The drive has no coupling block, so the diameter for the gaps is not known.'),
    )
  const flange = statedFact(coupling, 'coupling.flange-diameter')
  const circle = gaugeCircle(coupling)
  if (circle === undefined || flange === undefined)
    return failed(fault('no-diameter', 'The coupling needs its flange-diameter.'))

  const assumptions: string[] = []
  const readAt = circle.diameter
  const pilot = statedFact(coupling, 'coupling.pilot') === 'yes'
  const measured = measuredAlignment(reading, { radius: readAt / 2, pilot }, assumptions)
  if (!measured.ok) return measured
  const { face, rim, pose } = measured.value
  if (!circle.stated) assumptions.unshift(formatAssumedCircle(face.by, lookup.show(flange, 'length')))
  const bed = onlyBlock(reading, 'bed', lookup)
  const oneBed = bed.ok ? bed.value : undefined
  assumptions.push(
    ...markedAssumed([coupling, reading, lookup.near('target'), oneBed, ...(oneBed?.children ?? [])]),
  )
  const aim = targetOf(reading, oneBed, lookup, assumptions)
  const away = againstTarget({ face: face.value, rim: rim?.value, pose }, aim.target)

  const gapsFound = judgeGaps(coupling, flange, readAt, gapVariation(away.face), lookup, assumptions)
  const offset = away.rim && judgeOffset(coupling, away.rim.offset, gapsFound, lookup, assumptions)
  const judged = offset ? worst(gapsFound.verdict, offset.verdict) : gapsFound.verdict
  const offsetSeen = pose.offsetBasis === 'read' || (pose.offsetBasis === 'pilot' && !hasOffset(aim.target))
  const overall = judged === 'within' && !offsetSeen ? 'undecided' : judged

  const byOffset = offset !== undefined && gapsFound.verdict !== 'undecided'
  const open = byOffset ? offset : gapsFound
  const readWith = byOffset && rim ? rim.value : face.value
  const fineEnough =
    open.verdict === 'undecided' ? gaugeStepToDecide(open.value, open.limit, readWith) : undefined
  const decidedBy = fineEnough === undefined ? undefined : gaugeStepMade(fineEnough, lookup.system)

  const contradictory =
    face.value.closure.state === 'open' ||
    rim?.value.closure.state === 'open' ||
    face.repeats !== undefined ||
    rim?.repeats !== undefined
  const movedSince = movedAfter(reading)
  const afloat = factOf(reading, 'reading.afloat')?.value

  const softFeet = softUpTo(reading, lookup)
  const soft = softFeet?.found
  const softSince = (softFeet?.in ?? []).flatMap((id) =>
    id === idOf(reading) ? [] : (lookup.blockOf(id).name ?? ''),
  )
  const doubts = [
    ...doubtsAbout(reading, oneBed),
    ...(soft ? [softDoubt(soft, lookup.system, { since: softSince, accepted: softAccepted })] : []),
    ...pilotDoubt(pose, aim.target, lookup),
  ]
  const found: AlignmentState = {
    face: face.value,
    rim: rim?.value,
    pose,
    gapVariation: gapsFound.value,
    offset: offset?.value,
    limits: { gapVariation: gapsFound.limit, offset: offset?.limit },
    target: aim.target,
  }
  // The verdict does not depend on the bed: what is wrong there stands in the way of the steps alone.
  const footPlan = bed.ok ? orFault(() => footCorrectionPlan(bed.value, found, lookup, assumptions)) : bed
  const wanted = footPlan.ok ? footPlan.value.feet : []
  const unsure = overall === 'undecided' && allBelowUncertainty(wanted)
  const withheld: Withheld | undefined = movedSince
    ? 'moved-since'
    : (doubts.find(({ type }) => !(softAccepted && type === 'soft-foot'))?.type ??
      (contradictory
        ? 'contradictory'
        : unsure
          ? 'unsure'
          : overall !== 'within' && isFarOff(wanted)
            ? 'far-off'
            : undefined))
  const unmoved = (corrections: FootCorrectionPlan): CorrectionSteps => ({
    feet: corrections.feet.map(unmovedFoot),
    predicted: corrections.unmoved,
    ways: [],
    untried: false,
  })
  const steps = !footPlan.ok
    ? footPlan
    : withheld || overall === 'within'
      ? ok(unmoved(footPlan.value))
      : orFault(() => stepsOf(oneBed, footPlan.value, found))
  const last = reading.parent && lastReading(reading.parent)
  const bedFeet = orFault(() => feetOf(oneBed))
  const planned = plannedFrom(reading, bedFeet.ok ? bedFeet.value : undefined)
  const adjuster = footPlan.ok ? footPlan.value.adjuster : undefined
  const hardware = footPlan.ok && oneBed ? hardwareOf(oneBed, coupling) : undefined
  return ok({
    drive: reading.parent?.name ?? '',
    reading: reading.name ?? '',
    verdict: overall,
    gapVariation: gapsFound,
    ...(offset && rim && { offset: { ...offset, parts: rim.value.offset } }),
    readBy: { face: face.by, ...(rim && { rim: rim.by }) },
    ...(aim.parts.length > 0 && { target: aim }),
    ...(soft && { soft }),
    ...((face.runOut || rim?.runOut) && {
      runOut: { ...(face.runOut && { face: face.runOut }), ...(rim?.runOut && { rim: rim.runOut }) },
    }),
    offsetBasis: pose.offsetBasis,
    slope: face.value.slope,
    closure: face.value.closure,
    ...(rim && { rimClosure: rim.value.closure }),
    gaugeStep: face.value.gaugeStep,
    gaugeDiameter: readAt,
    ...(decidedBy !== undefined && { decidedBy }),
    feet: steps.ok ? steps.value.feet : [],
    ...((face.repeats || rim?.repeats) && {
      repeats: {
        ...(face.repeats && { gaps: face.repeats }),
        ...(rim?.repeats && { offsets: rim.repeats }),
      },
    }),
    contradictory,
    hot: statedFact(reading, 'reading.hot') === 'yes',
    ...(afloat && { afloat: afloat === 'yes' }),
    movedSince,
    doubts,
    ...(last && last !== reading && { laterReading: last.name ?? '' }),
    planned,
    ...(withheld && { withheld }),
    ...(adjuster && { adjuster }),
    ...(hardware && { hardware }),
    ...(!steps.ok && { feetFault: steps.fault }),
    ...(steps.ok && !withheld && { predicted: steps.value.predicted }),
    ways: steps.ok ? steps.value.ways : [],
    untried: steps.ok && steps.value.untried,
    assumptions,
    stepAssumptions: [
      ...(steps.ok && hardware ? roomAssumed(steps.value.feet, adjuster, hardware, lookup.system) : []),
      ...(steps.ok && steps.value.untried ? [untried] : []),
    ],
  })
}
