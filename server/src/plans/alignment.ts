import { type NutMove, nutMoves, type ShimPack, shimPack } from '../engineering/adjusters.ts'
import { type Closure, closure } from '../engineering/alignment/closure.ts'
import { fitFace } from '../engineering/alignment/face.ts'
import { type Foot, type FootCorrection, footCorrections } from '../engineering/alignment/feet.ts'
import { assumedGapLimit, gapVariation } from '../engineering/alignment/gap-variation.ts'
import type { InPlanes } from '../engineering/alignment/planes.ts'
import { type OffsetBasis, poseFromFace } from '../engineering/alignment/pose.ts'
import { gather } from '../engineering/alignment/readings.ts'
import { type FootMove, movedFace, movedRim, rigidMove } from '../engineering/alignment/rigid-move.ts'
import { fitRim } from '../engineering/alignment/rim.ts'
import { gaugeStepToDecide, type Verdict, verdict } from '../engineering/alignment/verdict.ts'
import { parseThread, type Thread } from '../engineering/thread.ts'
import type { Lookup } from '../job/lookup.ts'
import { type Block, childrenOf, factOf, type Value } from '../job/model.ts'
import { exactly, type Uncertain } from '../quantity/uncertainty.ts'
import { type AlignmentFault, asFault, fault } from './alignment-fault.ts'

/** How one foot gets its height: the lower nut of its stud, shims put in or taken out, by whatever is at hand, or not at all. */
export type FootStep =
  | { readonly by: 'nut'; readonly move: NutMove }
  | { readonly by: 'shims'; readonly action: 'put in' | 'take out' | 'none'; readonly pack: ShimPack }
  | { readonly by: 'hand' }
  | { readonly by: 'none' }

export interface CorrectedFoot extends FootCorrection {
  readonly step: FootStep
  /** What the step does to the height, m. */
  readonly moved: number
}

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
  const flange = factOf(coupling, 'coupling.flange-diameter')?.value
  const readAt = factOf(coupling, 'coupling.gauge-diameter')?.value ?? flange
  if (readAt === undefined || flange === undefined)
    return { ok: false, fault: fault('no-diameter', 'The coupling needs its flange-diameter.') }

  const assumptions: string[] = []
  if (!factOf(coupling, 'coupling.gauge-diameter'))
    assumptions.push(
      `the gaps were read at the rim of the flange, on ${lookup.show(flange, 'length')}: the coupling does not say its gauge-diameter`,
    )
  const gaugeStep = gauge.value
  const face = fitFace(gaps.value, { radius: readAt / 2, gaugeStep })
  if (!face.ok) return { ok: false, fault: asFault(face.problem) }

  const offsets = factOf(reading, 'reading.offsets')
  const rim = offsets && fitRim(offsets.value, { gaugeStep })
  if (rim && !rim.ok) return { ok: false, fault: asFault(rim.problem, 'offsets') }
  const pilot = factOf(coupling, 'coupling.pilot')?.value === 'yes'
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

  const open = offset && gapsFound.verdict !== 'undecided' ? offset : gapsFound
  const decidedBy =
    open.verdict === 'undecided' ? gaugeStepToDecide(open.value, open.limit, face.value) : undefined

  const moves = feetOf(lookup.near('bed'), assumptions)
  const corrected = moves.ok ? footCorrections(pose, moves.feet) : undefined
  const feetFault = moves.ok
    ? corrected && !corrected.ok
      ? asFault(corrected.problem)
      : undefined
    : moves.fault
  const feet =
    moves.ok && corrected?.ok
      ? corrected.value.feet.map((foot) =>
          overall === 'within' ? left(foot) : withStep(foot, moves.adjuster),
        )
      : []
  assumptions.push(
    'the target is a straight line through the shaft: no droop of the parted shaft end, heat growth or movement afloat is allowed for',
  )

  const rigid = feet.length > 0 ? rigidMove(feet.map(asMoved)) : undefined
  const face1 = rigid?.ok ? gapVariation(movedFace(face.value, rigid.value)) : undefined
  const rim1 = rigid?.ok && rim?.ok ? movedRim(rim.value, rigid.value).offset : undefined
  const predicted = face1 && {
    gapVariation: face1,
    ...(rim1 && { offset: rim1 }),
    inside:
      face1.value <= gapsFound.limit &&
      (!rim1 || !offset || Math.hypot(rim1.vertical.value, rim1.horizontal.value) <= offset.limit),
  }
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
      closure: closure(gather(gaps.value, gaugeStep)),
      ...(offsets && { rimClosure: closure(gather(offsets.value, gaugeStep)) }),
      gaugeStep,
      ...(decidedBy !== undefined && { decidedBy }),
      feet,
      ...(feetFault && { feetFault }),
      ...(predicted && { predicted }),
      assumptions,
    },
  }
}

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
    limitFrom: '0.001 in per inch of flange diameter, common practice',
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

type Adjuster = { readonly thread: Thread } | { readonly stock: readonly number[] } | undefined

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
  if (factOf(bed, 'bed.adjuster')?.value === 'shims') {
    const stock = factOf(bed, 'bed.shims')?.value
    if (!stock) assumptions.push('the bed does not list its shims: the moves are given as lengths')
    return stock && { stock: stock.map((shim) => shim.value) }
  }
  const designation = factOf(bed, 'bed.thread')?.value
  const thread = designation === undefined ? undefined : parseThread(designation)
  if (thread?.ok) return { thread: thread.value }
  assumptions.push(
    designation === undefined
      ? 'the bed does not say the thread of its studs: the moves are given as lengths, not turns'
      : `the pitch of thread ${designation} is not known here: the moves are given as lengths, not turns (write it as M16x1.5 or 3/4-10 UNC)`,
  )
  return undefined
}

/** A machine within its limits is left alone: a step of the adjuster could do more harm than what is left of the error. */
const left = (foot: FootCorrection): CorrectedFoot => ({ ...foot, step: { by: 'none' }, moved: 0 })

function withStep(foot: FootCorrection, adjuster: Adjuster): CorrectedFoot {
  const wanted = foot.vertical.value
  if (adjuster && 'thread' in adjuster) {
    const move = nutMoves(wanted, adjuster.thread).halfFlats
    return { ...foot, step: { by: 'nut', move }, moved: move.moved }
  }
  if (adjuster) {
    const pack = shimPack(Math.abs(wanted), adjuster.stock)
    const action = pack.pieces.length === 0 ? 'none' : wanted > 0 ? 'put in' : 'take out'
    return { ...foot, step: { by: 'shims', action, pack }, moved: Math.sign(wanted) * pack.thickness }
  }
  return { ...foot, step: { by: 'hand' }, moved: wanted }
}

/** Why the feet of this bed cannot set the slope of any machine; undefined when they can, or when they are not all known yet. */
export function bedFault(bed: Block): AlignmentFault | undefined {
  const read = feetOf(bed, [])
  if (!read.ok) return undefined
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
