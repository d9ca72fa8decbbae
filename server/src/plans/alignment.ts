import { type Closure, closure } from '../engineering/alignment/closure.ts'
import { fitFace } from '../engineering/alignment/face.ts'
import { type Foot, footCorrections } from '../engineering/alignment/feet.ts'
import { assumedGapLimit, gapVariation } from '../engineering/alignment/gap-variation.ts'
import type { InPlanes } from '../engineering/alignment/planes.ts'
import { type OffsetBasis, poseFromFace } from '../engineering/alignment/pose.ts'
import { gather } from '../engineering/alignment/readings.ts'
import { type FootMove, movedFace, movedRim, rigidMove } from '../engineering/alignment/rigid-move.ts'
import { fitRim } from '../engineering/alignment/rim.ts'
import { gaugeStepToDecide, type Verdict, verdict } from '../engineering/alignment/verdict.ts'
import { parseThread } from '../engineering/thread.ts'
import type { Lookup } from '../job/lookup.ts'
import { type Block, childrenOf, factOf, type Value } from '../job/model.ts'
import { exactly, type Uncertain } from '../quantity/uncertainty.ts'
import { type AlignmentFault, asFault, fault } from './alignment-fault.ts'
import { said, Unreadable } from './said.ts'
import { type Adjuster, type CorrectedFoot, left, stepsFor } from './steps.ts'

export interface Judged {
  readonly value: Uncertain
  readonly limit: number
  /** Where the limit is from: `the maker`, `the job file`, or the rule that was assumed. */
  readonly limitFrom: string
  readonly verdict: Verdict
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
  /** The readings do not close: no moves are given from them. */
  readonly contradictory: boolean
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

const limitSource = (value: Value<unknown>): string =>
  value.provenance?.words.includes('maker') ? 'the maker' : 'the job file'

/** Works out a reading of the coupling: verdict, slope, offset, and the correction of each foot. Never throws: what stands in the way is data. */
export function correctionOf(reading: Block, lookup: Lookup): CorrectionOutcome {
  try {
    return work(reading, lookup)
  } catch (error) {
    if (error instanceof Unreadable)
      return { ok: false, fault: fault('unreadable', `${capital(error.message)}: put that right first.`) }
    if (error instanceof RangeError) return { ok: false, fault: fault('impossible', error.message) }
    throw error
  }
}

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
  const face = fitFace(gaps.value, { radius: readAt / 2, gaugeStep })
  if (!face.ok) return { ok: false, fault: asFault(face.problem) }

  const offsets = said(reading, 'reading.offsets')
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

  const gapClosure = closure(gather(gaps.value, gaugeStep))
  const rimClosure = offsets && closure(gather(offsets, gaugeStep))
  const contradictory = gapClosure.state === 'open' || rimClosure?.state === 'open'

  const moves = feetOf(lookup.near('bed'), assumptions)
  const corrected = moves.ok ? footCorrections(pose, moves.feet) : undefined
  assumptions.push(
    'the target is a straight line through the shaft: no droop of the parted shaft end, heat growth or movement afloat is allowed for',
  )

  /** What the next reading should show, and how much of its limits that uses. */
  const outcomeOf = (feet: readonly CorrectedFoot[]): Outcome | AlignmentFault => {
    const rigid = rigidMove(feet.map(asMoved))
    if (!rigid.ok) return asFault(rigid.problem)
    const gap = gapVariation(movedFace(face.value, rigid.value))
    const flangeAt = rim?.ok ? movedRim(rim.value, rigid.value).offset : undefined
    const away = flangeAt && Math.hypot(flangeAt.vertical.value, flangeAt.horizontal.value)
    const used = Math.max(gap.value / gapsFound.limit, away !== undefined && offset ? away / offset.limit : 0)
    return { gapVariation: gap, ...(flangeAt && { offset: flangeAt }), used }
  }
  const wanted = corrected?.ok ? corrected.value.feet : []
  const leave = overall === 'within' || contradictory
  const feet =
    leave || !moves.ok
      ? wanted.map(left)
      : stepsFor(wanted, moves.adjuster, (chosen) => {
          const result = outcomeOf(chosen)
          return 'used' in result ? result.used : Number.POSITIVE_INFINITY
        })
  const outcome = feet.length > 0 ? outcomeOf(feet) : undefined
  const feetFault = !moves.ok
    ? moves.fault
    : corrected?.ok === false
      ? asFault(corrected.problem)
      : outcome && 'words' in outcome
        ? outcome
        : undefined
  const predicted = outcome && 'used' in outcome && !contradictory ? foreseen(outcome) : undefined
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
      contradictory,
      ...(feetFault && { feetFault }),
      ...(predicted && { predicted }),
      assumptions,
    },
  }
}

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
const asMoved = (foot: CorrectedFoot): FootMove => ({
  name: foot.name,
  x: foot.x,
  y: foot.y,
  vertical: exactly(foot.moved),
  horizontal: exactly(foot.step.by === 'none' ? 0 : foot.horizontal.value),
})

function judgeGaps(
  coupling: Block,
  flange: number,
  readAt: number,
  value: Uncertain,
  lookup: Lookup,
  assumptions: string[],
): Judged {
  said(coupling, 'coupling.gap-variation')
  const stated = factOf(coupling, 'coupling.gap-variation')
  if (stated?.value.high !== undefined) {
    if (Math.abs(readAt - flange) > 1e-6)
      assumptions.push(
        `the gap variation allowed holds where the gauge goes in, on ${lookup.show(readAt, 'length')}`,
      )
    return {
      value,
      limit: stated.value.high,
      limitFrom: limitSource(stated),
      verdict: verdict(value, stated.value.high),
    }
  }
  // The rule is of the flange; on a smaller circle the same slope shows less, so the limit shrinks with it.
  const limit = assumedGapLimit(flange) * (readAt / flange)
  assumptions.push(
    'no gap variation is stated: 0.001 of the diameter is allowed (0.001 in per inch of flange diameter, common practice)',
  )
  return {
    value,
    limit,
    limitFrom: '0.001 of the circle the gauge goes in on, common practice',
    verdict: verdict(value, limit),
  }
}

function judgeOffset(
  coupling: Block,
  parts: InPlanes<Uncertain>,
  gaps: Judged,
  lookup: Lookup,
  assumptions: string[],
): Judged & { readonly parts: InPlanes<Uncertain> } {
  const value = {
    value: Math.hypot(parts.vertical.value, parts.horizontal.value),
    standard: Math.max(parts.vertical.standard, parts.horizontal.standard),
  }
  said(coupling, 'coupling.offset')
  const stated = factOf(coupling, 'coupling.offset')
  const limit = stated?.value.high ?? gaps.limit
  if (stated?.value.high === undefined)
    assumptions.push(
      `no offset is stated: it is held against the same ${lookup.show(limit, 'length')} as the gap variation (common practice, no source)`,
    )
  return {
    value,
    parts,
    limit,
    limitFrom: stated ? limitSource(stated) : 'as the gap variation, common practice, no source',
    verdict: verdict(value, limit),
  }
}

type Feet =
  | { readonly ok: true; readonly feet: readonly Foot[]; readonly adjuster: Adjuster }
  | { readonly ok: false; readonly fault: AlignmentFault }

function feetOf(bed: Block | undefined, assumptions: string[]): Feet {
  if (!bed)
    return {
      ok: false,
      fault: fault(
        'no-feet',
        'The drive has no bed block with the feet of the machine, so no moves can be worked out.',
      ),
    }
  const feet: Foot[] = []
  for (const foot of childrenOf(bed, 'foot')) {
    const x = factOf(foot, 'foot.from-coupling')?.value
    const y = factOf(foot, 'foot.across')?.value
    if (x === undefined || y === undefined)
      return {
        ok: false,
        fault: fault(
          'no-feet',
          `Foot ${foot.name ?? ''} needs from-coupling and across before moves can be worked out.`,
        ),
      }
    feet.push({ name: foot.name ?? '', x, y })
  }
  if (feet.length === 0)
    return {
      ok: false,
      fault: fault('no-feet', 'The bed has no foot blocks, so no moves can be worked out.'),
    }
  return { ok: true, feet, adjuster: adjusterOf(bed, assumptions) }
}

function adjusterOf(bed: Block, assumptions: string[]): Adjuster {
  if (said(bed, 'bed.adjuster') === 'shims') {
    const stock = said(bed, 'bed.shims')
    assumptions.push(
      stock
        ? 'what lies under each foot now is not said: whether so much can be taken out, measure first'
        : 'the bed does not list its shims: the moves are given as lengths',
    )
    return stock ? { by: 'shims', stock: stock.map((shim) => shim.value) } : { by: 'hand' }
  }
  const designation = said(bed, 'bed.thread')
  const thread = designation === undefined ? undefined : parseThread(designation)
  if (thread?.ok) return { by: 'nut', thread: thread.value }
  assumptions.push(
    designation === undefined
      ? 'the bed does not say the thread of its studs: the moves are given as lengths, not turns'
      : `the pitch of thread ${designation} is not known here: the moves are given as lengths, not turns (write it as "M16x1.5" or "3/4-10 UNC")`,
  )
  return { by: 'hand' }
}

/** Undefined where what it needs is written but could not be read. */
function readable<T>(work: () => T): T | undefined {
  try {
    return work()
  } catch (error) {
    if (error instanceof Unreadable) return undefined
    throw error
  }
}

/** Why the feet of this bed cannot set the slope of any machine; undefined when they can, or when they are not all known yet. */
export function bedFault(bed: Block): AlignmentFault | undefined {
  const read = readable(() => feetOf(bed, []))
  if (!read?.ok) return undefined
  const still = { value: 0, standard: 0 }
  const rigid = rigidMove(read.feet.map((foot) => ({ ...foot, vertical: still, horizontal: still })))
  return rigid.ok ? undefined : asFault(rigid.problem)
}

/** The reading that counts: the last by date, and of one day the last in the file. */
export function lastReading(drive: Block): Block | undefined {
  const taken = (reading: Block): string => factOf(reading, 'reading.taken')?.value ?? ''
  return childrenOf(drive, 'reading').reduce<Block | undefined>(
    (last, reading) => (last && taken(last) > taken(reading) ? last : reading),
    undefined,
  )
}
