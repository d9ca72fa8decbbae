import type { Target } from '../engineering/alignment/feet.ts'
import { expanded, type Uncertain } from '../quantity/uncertainty.ts'
import type { Correction, WrittenWrong } from './alignment.ts'
import type { Withheld } from './alignment-doubts.ts'
import { type Work, workOf } from './alignment-work.ts'
import type { Way } from './choose-moves.ts'
import type { CorrectedFoot } from './steps.ts'

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
}

interface Shims {
  readonly action: 'put in' | 'take out' | 'make' | 'none'
  readonly thickness_mm: number
  /** Of the pack there now, where it is made anew. */
  readonly from_mm?: number
  readonly pieces_mm: readonly number[]
}

/** What would bring the machine inside its limits, where the steps do not. */
export interface PlanWay {
  readonly type: Way['type']
  readonly partsOfFlat?: number
  readonly thickness_mm?: number
  readonly foot?: string
  readonly up_mm?: number
  readonly clearance_mm?: number
}

export interface PlanFoot {
  readonly name: string
  readonly up_mm: Figure
  readonly starboard_mm: Figure
  /** How far the step takes the foot sideways, + to starboard; absent where no step is given. */
  readonly slide_mm?: number
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

/** `plan --format json`: millimetres and milliradians; uncertainties are expanded (k = 2). */
export interface PlanJson {
  readonly version: 1
  readonly drive: string
  readonly reading: string
  readonly verdict: 'within' | 'outside' | 'undecided'
  readonly movedSince: boolean
  readonly withheld: Withheld | null
  readonly slip: string | null
  readonly errors: readonly WrittenWrong[]
  readonly gapVariation_mm: Figure & { readonly limit: number }
  readonly slope_mrad: { readonly vertical: Figure; readonly horizontal: Figure }
  readonly offset_mm: { readonly vertical: Figure; readonly horizontal: Figure } | null
  readonly feet: readonly PlanFoot[]
  readonly predicted: {
    readonly gapVariation_mm: Figure
    readonly offset_mm: { readonly vertical: Figure; readonly horizontal: Figure } | null
    readonly inside: boolean
    readonly provable: boolean
  } | null
  readonly ways: readonly (readonly PlanWay[])[]
  /** Where the machine is to stand while it is read, and why; null for a straight line through the shaft. */
  readonly target:
    | (PlanTarget & { readonly parts: readonly (PlanTarget & { readonly words: string })[] })
    | null
  /** What turned with the flange, total indicator reading. */
  readonly runOut_mm: { readonly face: Figure | null; readonly rim: Figure | null } | null
  readonly softFeet: {
    readonly feet: readonly string[]
    readonly shim: { readonly foot: string; readonly thickness_mm: number } | null
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

const way = (one: Way): PlanWay => {
  switch (one.type) {
    case 'finer-step':
      return { type: one.type, partsOfFlat: one.partsOfFlat }
    case 'thinner-shim':
      return { type: one.type, thickness_mm: round(one.thickness * 1000) }
    case 'travel':
      return { type: one.type, foot: one.foot, up_mm: round(one.up * 1000) }
    case 'hole-clearance':
      return { type: one.type, foot: one.foot, clearance_mm: round(one.sideways * 1000) }
  }
}

function foot({ name, vertical, horizontal, step, slid }: CorrectedFoot): PlanFoot {
  const base = {
    name,
    up_mm: figure(vertical),
    starboard_mm: figure(horizontal),
    ...(step.by !== 'none' && { slide_mm: round(slid * 1000) }),
  }
  if (step.by === 'nut') {
    const { direction, turns, flats, lowerNut } = step.move
    return {
      ...base,
      turns: { nut: 'lower', direction, ...(lowerNut && { seenFromAbove: lowerNut }), turns, flats },
    }
  }
  if (step.by === 'shims') {
    return {
      ...base,
      shims: {
        action: step.action,
        thickness_mm: round(step.thickness * 1000),
        ...(step.from !== undefined && { from_mm: round(step.from * 1000) }),
        pieces_mm: step.pieces.map((p) => round(p * 1000)),
      },
    }
  }
  return base
}

function workJson(c: Correction): PlanWork | null {
  const work = workOf(c, 'metric')
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

const standing = ({ vertical, horizontal }: Target): PlanTarget => ({
  offset_mm: { vertical: round(vertical.offset * 1000), horizontal: round(horizontal.offset * 1000) },
  slope_mrad: { vertical: round(vertical.slope * 1000), horizontal: round(horizontal.slope * 1000) },
})

export const planJson = (c: Correction): PlanJson => ({
  version: 1,
  drive: c.drive,
  reading: c.reading,
  verdict: c.verdict,
  movedSince: c.movedSince,
  withheld: c.withheld ?? null,
  slip: c.slip ?? null,
  errors: c.errors ?? [],
  gapVariation_mm: { ...figure(c.gapVariation.value), limit: round(c.gapVariation.limit * 1000) },
  slope_mrad: both(c.slope),
  offset_mm: c.offset ? both(c.offset.parts) : null,
  feet: c.feet.map(foot),
  predicted: c.predicted
    ? {
        gapVariation_mm: figure(c.predicted.gapVariation),
        offset_mm: c.predicted.offset ? both(c.predicted.offset) : null,
        inside: c.predicted.inside,
        provable: c.predicted.provable,
      }
    : null,
  ways: c.ways.map((together) => together.map(way)),
  target: c.target
    ? {
        ...standing(c.target.target),
        parts: c.target.parts.map((part) => ({ words: part.words, ...standing(part) })),
      }
    : null,
  runOut_mm: c.runOut
    ? { face: c.runOut.face ? figure(c.runOut.face) : null, rim: c.runOut.rim ? figure(c.runOut.rim) : null }
    : null,
  softFeet: c.soft
    ? {
        feet: c.soft.soft,
        shim: c.soft.shim
          ? { foot: c.soft.shim.name, thickness_mm: round(c.soft.shim.thickness * 1000) }
          : null,
      }
    : null,
  work: workJson(c),
  assumptions: c.assumptions,
})
