import type { Foot, Target } from '../../../engineering/alignment/feet.ts'
import {
  shaftEndTarget,
  sumOfTargets,
  targetBefore,
  targetCold,
} from '../../../engineering/alignment/target.ts'
import { type Block, childrenOf, factOf } from '../../../job/model.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { listed } from '../../common/listed.ts'
import { statedFact } from '../../common/stated-fact.ts'

/** One part of the target: why, and where the machine is to stand for it, m and rad. */
export interface TargetPart extends Target {
  readonly words: string
}

/** Where the machine is to stand while it is read so. */
export interface StatedTarget {
  readonly target: Target
  /** Empty where no target is given: a straight line through the shaft. */
  readonly parts: readonly TargetPart[]
}

const has = ({ vertical, horizontal }: Target): boolean =>
  [vertical.offset, vertical.slope, horizontal.offset, horizontal.slope].some((value) => value !== 0)

/** The target of a reading with its parts: what of it holds for a machine read dry or afloat, cold or hot. Throws Unreadable and OutOfRange. */
export function targetOf(
  reading: Block,
  bed: Block | undefined,
  lookup: Lookup,
  assumptions: string[],
): StatedTarget {
  const block = lookup.near('target')
  const parts = [
    shaftEnd(reading, block, assumptions),
    afloat(reading, block, assumptions),
    growth(reading, bed, assumptions),
    maker(block),
  ].filter((part): part is TargetPart => part !== undefined && has(part))
  const open = listed(unstatedCauses(reading, bed, block), 'or')
  if (open !== '')
    assumptions.push(
      parts.length === 0
        ? `the target is a straight line through the shaft, with no allowance for ${open}`
        : `the target has no allowance for ${open}: none is stated`,
    )
  return { target: sumOfTargets(parts), parts }
}

/** The causes that would count for this reading, and of which the job says nothing. */
function unstatedCauses(reading: Block, bed: Block | undefined, block: Block | undefined): readonly string[] {
  const states = (way: string): boolean =>
    block !== undefined && [...block.facts.keys()].some((name) => name.startsWith(way))
  const grows = bed !== undefined && childrenOf(bed, 'foot').some((foot) => factOf(foot, 'foot.growth'))
  const causes = [
    !states('shaft-') && !isSupported(reading) && 'droop of the parted shaft end',
    !grows && statedFact(reading, 'reading.hot') !== 'yes' && 'heat growth',
    !states('afloat-') && statedFact(reading, 'reading.afloat') !== 'yes' && 'movement afloat',
  ]
  return causes.filter((cause) => cause !== false)
}

const isSupported = (reading: Block): boolean => statedFact(reading, 'reading.parted-end') === 'supported'

/** Holds for a shaft end that hangs free: supported, it stands where it runs. */
function shaftEnd(reading: Block, block: Block | undefined, assumptions: string[]): TargetPart | undefined {
  const droop = statedFact(block, 'target.shaft-droop') ?? 0
  const slope = statedFact(block, 'target.shaft-slope') ?? 0
  if (droop === 0 && slope === 0) return undefined
  if (isSupported(reading)) {
    assumptions.push(
      'the end of the parted shaft was supported on its running line, so the droop of the target does not apply',
    )
    return undefined
  }
  if (statedFact(reading, 'reading.parted-end') === undefined)
    assumptions.push(
      'the end of the parted shaft hung free: parted-end is not stated, and the target has a droop',
    )
  return {
    words: 'the end of the parted shaft droops until the coupling is joined',
    ...shaftEndTarget({ droop, slope }),
  }
}

type TargetSource = 'afloat' | 'maker'

/** The four figures of one cause. */
const stated = (block: Block | undefined, way: TargetSource): Target => ({
  vertical: {
    offset: statedFact(block, `target.${way}-up`) ?? 0,
    slope: statedFact(block, `target.${way}-slope-up`) ?? 0,
  },
  horizontal: {
    offset: statedFact(block, `target.${way}-to-starboard`) ?? 0,
    slope: statedFact(block, `target.${way}-slope-to-starboard`) ?? 0,
  },
})

/** Holds for a dry reading: afloat, the machine has moved already. */
function afloat(reading: Block, block: Block | undefined, assumptions: string[]): TargetPart | undefined {
  const movement = stated(block, 'afloat')
  const is = statedFact(reading, 'reading.afloat')
  if (!has(movement) || is === 'yes') return undefined
  if (is === undefined)
    assumptions.push('the reading was taken dry: afloat is not stated, and the target has a movement afloat')
  return { words: 'the hull changes shape afloat, and the machine moves with it', ...targetBefore(movement) }
}

/** Holds for a cold reading: hot, the feet have risen already. */
function growth(reading: Block, bed: Block | undefined, assumptions: string[]): TargetPart | undefined {
  const blocks = bed ? childrenOf(bed, 'foot') : []
  const rises = blocks.map((foot) => statedFact(foot, 'foot.growth'))
  const hot = statedFact(reading, 'reading.hot')
  if (hot === 'yes' || rises.every((rise) => !rise)) return undefined
  const feet = blocks.map((foot, i): (Foot & { readonly growth: number }) | undefined => {
    const x = factOf(foot, 'foot.from-coupling')?.value
    const y = factOf(foot, 'foot.across')?.value
    return x === undefined || y === undefined
      ? undefined
      : { name: foot.name ?? '', x, y, growth: rises[i] ?? 0 }
  })
  const placed = feet.filter((foot) => foot !== undefined)
  const cold = placed.length === feet.length ? targetCold(placed) : undefined
  if (!cold?.ok) {
    assumptions.push('the growth of the feet is left out: their places do not show how the axis rises')
    return undefined
  }
  if (hot === undefined)
    assumptions.push('the machine was read cold: hot is not stated, and its feet have a growth')
  if (rises.some((rise) => rise === undefined))
    assumptions.push('a foot without a growth does not rise when hot, although others do')
  return { words: 'the feet rise with heat', ...cold.value }
}

function maker(block: Block | undefined): TargetPart {
  return { words: 'specified by the maker', ...stated(block, 'maker') }
}
