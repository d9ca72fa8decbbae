import type { NutMove } from '../../../engineering/adjusters.ts'
import type { Closure } from '../../../engineering/alignment/closure.ts'
import type { Target } from '../../../engineering/alignment/feet.ts'
import type { UnitSystem } from '../../../quantity/kinds.ts'
import { expanded, type Uncertain } from '../../../quantity/uncertainty.ts'
import type { WayInside } from './choose-moves.ts'
import type { Accepted, Awaited, Correction, WrittenWrong } from './correction.ts'
import type { Withheld } from './doubts.ts'
import type { SoftFound } from './lifts.ts'
import { differsAt } from './planned-move-words.ts'
import { angleOf } from './rating.ts'
import type { RoundFact } from './readings.ts'
import type { CorrectedFoot } from './steps.ts'
import { type Work, workOf } from './work.ts'

export interface Figure {
  readonly value: number
  readonly uncertainty: number
}

interface NutTurns {
  readonly nut: 'lower'
  readonly direction: 'up' | 'down' | 'none'
  readonly seenFromAbove?: 'clockwise' | 'counter-clockwise'
  readonly turns: number
  readonly flats: number
  /** A foot between the ends: about so far, until it just touches. */
  readonly untilItTouches?: true
}

interface Shims {
  readonly action: 'put in' | 'take out' | 'make' | 'none'
  readonly thickness_mm: number
  /** The pack there now and the pack then, where it is known. */
  readonly from_mm?: number
  readonly to_mm?: number
  readonly pieces_mm: readonly number[]
}

/** What would bring the machine inside its limits, where the steps do not. */
export interface PlanWay {
  readonly type: WayInside['type']
  readonly partsOfFlat?: number
  readonly thickness_mm?: number
  readonly foot?: string
  readonly up_mm?: number
  readonly clearance_mm?: number
  readonly offCentre_mm?: number
}

export interface PlanFoot {
  readonly name: string
  readonly up_mm: Figure
  readonly starboard_mm: Figure
  /** How far the step takes the foot sideways, + to starboard; absent where no step is given. */
  readonly slide_mm?: number
  /** What the step does to the height, + up; absent where no step is given. */
  readonly moved_mm?: number
  readonly turns?: NutTurns
  readonly shims?: Shims
}

/** Feet set together at one station. */
interface PlanVisit {
  readonly feet: readonly string[]
  readonly up_mm: number
}

/** How the feet get their heights, all fastenings slack meanwhile. */
export interface PlanWork {
  readonly passes: readonly (readonly (PlanVisit & { readonly flats?: number })[])[]
  readonly packs: readonly (PlanVisit & { readonly lift_mm: number })[]
  readonly slack: readonly { readonly foot: string; readonly slack_mm: number }[]
  readonly tilt_mrad: number
}

/** Offset of the machine flange and slope of its axis: + up, + to starboard. */
export interface PlanTarget {
  readonly offset_mm: { readonly vertical: number; readonly horizontal: number }
  readonly slope_mrad: { readonly vertical: number; readonly horizontal: number }
}

/** Values of one round that do not agree. */
interface Contradiction {
  readonly read: RoundFact
  readonly type: 'do not close' | 'repeated'
  readonly difference_mm: number
  readonly allowed_mm: number
}

/** The plan of one drive for `plan --format json`: millimetres and milliradians; uncertainties are expanded (k = 2). */
export interface PlanJson {
  readonly drive: string
  readonly reading: string
  /** Why there is no plan: here there is one. */
  readonly fault: null
  readonly verdict: 'within' | 'outside' | 'undecided'
  readonly movedSince: boolean
  readonly withheld: Withheld | null
  readonly planned: readonly {
    readonly feet: readonly { readonly foot: string; readonly move: string }[]
    readonly differsAt: readonly string[] | null
  }[]
  readonly slip: string | null
  readonly errors: readonly WrittenWrong[]
  readonly findings: readonly Awaited[]
  readonly accepted: readonly Accepted[]
  readonly gauge_mm: number
  readonly decidedBy_mm: number | null
  readonly contradictions: readonly Contradiction[]
  readonly gapVariation_mm: Figure & { readonly limit: number }
  readonly offsetDistance_mm: (Figure & { readonly limit: number }) | null
  readonly slope_mrad: { readonly vertical: Figure; readonly horizontal: Figure }
  readonly offset_mm: { readonly vertical: Figure; readonly horizontal: Figure } | null
  /** Of the machine axis from where it is to point. */
  readonly angle_mrad: Figure
  readonly feet: readonly PlanFoot[]
  readonly predicted: {
    readonly gapVariation_mm: Figure
    readonly opening_mm: { readonly vertical: Figure; readonly horizontal: Figure }
    readonly offset_mm: { readonly vertical: Figure; readonly horizontal: Figure } | null
    readonly fromTarget_mm: { readonly gapVariation: number; readonly offset: number | null }
    readonly inside: boolean
    readonly provable: boolean
  } | null
  readonly ways: readonly (readonly PlanWay[])[]
  /** Where the machine is to stand while it is read, and why; null for a straight line through the shaft. */
  readonly target:
    | (PlanTarget & {
        /** Gap at the top less gap at the bottom, and at starboard less at port, where the machine stands right. */
        readonly opening_mm: { readonly vertical: number; readonly horizontal: number }
        readonly parts: readonly (PlanTarget & { readonly words: string })[]
      })
    | null
  /** What turned with the flange, total indicator reading. */
  readonly runOut_mm: { readonly face: Figure | null; readonly rim: Figure | null } | null
  readonly softFeet: {
    readonly feet: readonly string[]
    /** What is missing under the worst. */
    readonly missing: { readonly foot: string; readonly up_mm: number } | null
    readonly shim: {
      readonly foot: string
      readonly thickness_mm: number
      readonly pieces_mm: readonly number[]
    } | null
    readonly nut:
      | (NutTurns & { readonly foot: string; readonly moved_mm: number; readonly smallestStep_mm: number })
      | null
  } | null
  readonly work: PlanWork | null
  readonly assumptions: readonly string[]
}

/** A ten-thousandth of the unit is far below any gauge; more digits would only be noise in a diff. */
export const round = (x: number): number => Number((Math.round(x * 1e4) / 1e4 + 0).toFixed(4))

export const figure = (u: Uncertain): Figure => ({
  value: round(u.value * 1000),
  uncertainty: round(expanded(u) * 1000),
})

export const both = (of: { vertical: Uncertain; horizontal: Uncertain }) => ({
  vertical: figure(of.vertical),
  horizontal: figure(of.horizontal),
})

const way = (one: WayInside): PlanWay => {
  switch (one.type) {
    case 'finer-step':
      return { type: one.type, partsOfFlat: one.partsOfFlat }
    case 'thinner-shim':
      return { type: one.type, thickness_mm: round(one.thickness * 1000) }
    case 'travel':
      return { type: one.type, foot: one.foot, up_mm: round(one.up * 1000) }
    case 'hole-clearance':
      return { type: one.type, foot: one.foot, clearance_mm: round(one.sideways * 1000) }
    case 'off-centre':
      return { type: one.type, offCentre_mm: round(one.by * 1000) }
  }
}

const nutTurns = ({ direction, turns, flats, lowerNut }: NutMove): NutTurns => ({
  nut: 'lower',
  direction,
  ...(lowerNut && { seenFromAbove: lowerNut }),
  turns,
  flats,
})

function softFeet({ soft, missing }: SoftFound): NonNullable<PlanJson['softFeet']> {
  if (typeof missing === 'string') return { feet: soft, missing: null, shim: null, nut: null }
  const { name, height, step } = missing
  return {
    feet: soft,
    missing: { foot: name, up_mm: round(height * 1000) },
    shim:
      step.by === 'shims'
        ? {
            foot: name,
            thickness_mm: round((step.pieces.length > 0 ? step.thickness : height) * 1000),
            pieces_mm: step.pieces.map((piece) => round(piece * 1000)),
          }
        : null,
    nut:
      step.by === 'nut'
        ? {
            foot: name,
            ...nutTurns(step.move),
            moved_mm: round(step.move.moved * 1000),
            smallestStep_mm: round(step.smallest * 1000),
          }
        : null,
  }
}

function foot({ name, vertical, horizontal, step, moved, slid }: CorrectedFoot): PlanFoot {
  const base = {
    name,
    up_mm: figure(vertical),
    starboard_mm: figure(horizontal),
    ...(step.by !== 'none' && { moved_mm: round(moved * 1000), slide_mm: round(slid * 1000) }),
  }
  if (step.by === 'nut')
    return { ...base, turns: { ...nutTurns(step.move), ...(step.touch && { untilItTouches: true }) } }
  if (step.by === 'shims') {
    return {
      ...base,
      shims: {
        action: step.action,
        thickness_mm: round(step.thickness * 1000),
        ...(step.from !== undefined && {
          from_mm: round(step.from * 1000),
          to_mm: round((step.from + moved) * 1000),
        }),
        pieces_mm: step.pieces.map((p) => round(p * 1000)),
      },
    }
  }
  return base
}

function workJson(c: Correction, system: UnitSystem): PlanWork | null {
  const work = workOf(c, system)
  if (!work) return null
  const visit = ({ feet, by }: Work['passes'][number][number]): PlanVisit => ({
    feet: feet.map(({ name }) => name),
    up_mm: round(by * 1000),
  })
  return {
    passes: work.passes.map((visits) =>
      visits.map((one) => ({
        ...visit(one),
        ...(work.flat && { flats: round(Math.abs(one.by) / work.flat) }),
      })),
    ),
    packs: work.packs.map((one) => ({ ...visit(one), lift_mm: round(one.lift * 1000) })),
    slack: c.feet.map(({ name }, i) => ({ foot: name, slack_mm: round((work.slack[i] ?? 0) * 1000) })),
    tilt_mrad: round(work.tilt * 1000),
  }
}

const targetFigures = ({ vertical, horizontal }: Target): PlanTarget => ({
  offset_mm: { vertical: round(vertical.offset * 1000), horizontal: round(horizontal.offset * 1000) },
  slope_mrad: { vertical: round(vertical.slope * 1000), horizontal: round(horizontal.slope * 1000) },
})

const opening = ({ vertical, horizontal }: Target, diameter: number) => ({
  vertical: round(-diameter * vertical.slope * 1000),
  horizontal: round(-diameter * horizontal.slope * 1000),
})

function contradictions(c: Correction): readonly Contradiction[] {
  const rim = c.readBy.rim ?? 'offsets'
  const of = (
    read: RoundFact,
    type: Contradiction['type'],
    found: { readonly difference: number; readonly allowed: number } | undefined,
  ) =>
    found
      ? [
          {
            read,
            type,
            difference_mm: round(found.difference * 1000),
            allowed_mm: round(found.allowed * 1000),
          },
        ]
      : []
  const open = (closure: Closure | undefined) => (closure?.state === 'open' ? closure : undefined)
  return [
    ...of(c.readBy.face, 'repeated', c.repeats?.gaps),
    ...of(rim, 'repeated', c.repeats?.offsets),
    ...of(c.readBy.face, 'do not close', open(c.closure)),
    ...of(rim, 'do not close', open(c.rimClosure)),
  ]
}

/** `system`: that of the job, since steps that are set by hand are in its units. */
export const planJson = (c: Correction, system: UnitSystem = 'metric'): PlanJson => ({
  drive: c.drive,
  reading: c.reading,
  fault: null,
  verdict: c.verdict,
  movedSince: c.movedSince,
  withheld: c.withheld ?? null,
  planned: c.planned.map((one) => ({
    feet: one.words.map(({ foot: name, words }) => ({ foot: name, move: words })),
    differsAt: differsAt(one, c) ?? null,
  })),
  slip: c.moveDiscrepancy ?? null,
  errors: c.errors ?? [],
  gauge_mm: round(c.gaugeStep * 1000),
  decidedBy_mm: c.decidedBy === undefined ? null : round(c.decidedBy * 1000),
  contradictions: contradictions(c),
  findings: c.findings ?? [],
  accepted: c.accepted ?? [],
  gapVariation_mm: { ...figure(c.gapVariation.value), limit: round(c.gapVariation.limit * 1000) },
  offsetDistance_mm: c.offset ? { ...figure(c.offset.value), limit: round(c.offset.limit * 1000) } : null,
  slope_mrad: both(c.slope),
  offset_mm: c.offset ? both(c.offset.parts) : null,
  angle_mrad: figure(angleOf(c)),
  feet: c.feet.map(foot),
  predicted: c.predicted
    ? {
        gapVariation_mm: figure(c.predicted.gapVariation),
        opening_mm: both(c.predicted.opening),
        offset_mm: c.predicted.offset ? both(c.predicted.offset) : null,
        fromTarget_mm: {
          gapVariation: round(c.predicted.fromTarget.gapVariation * 1000),
          offset:
            c.predicted.fromTarget.offset === undefined ? null : round(c.predicted.fromTarget.offset * 1000),
        },
        inside: c.predicted.inside,
        provable: c.predicted.provable,
      }
    : null,
  ways: c.ways.map((together) => together.map(way)),
  target: c.target
    ? {
        ...targetFigures(c.target.target),
        opening_mm: opening(c.target.target, c.gaugeDiameter),
        parts: c.target.parts.map((part) => ({ words: part.words, ...targetFigures(part) })),
      }
    : null,
  runOut_mm: c.runOut
    ? { face: c.runOut.face ? figure(c.runOut.face) : null, rim: c.runOut.rim ? figure(c.runOut.rim) : null }
    : null,
  softFeet: c.soft ? softFeet(c.soft) : null,
  work: workJson(c, system),
  assumptions: [...c.assumptions, ...c.stepAssumptions],
})
