import { machinerySpaceAmbientC } from '../../../engineering/electrical/derating.ts'
import { ratingInAmbient } from '../../../engineering/electrical/rating-in-ambient.ts'
import { type Block, factOf } from '../../../job/model.ts'
import { formatNumber } from '../../../quantity/format.ts'
import { formatShare } from '../../../quantity/format-measures.ts'
import { celsius } from '../../common/celsius.ts'

/** What the heat around a fuse or breaker leaves of its rating. */
export interface FuseHeat {
  /** The part of its rating that it carries, from 0 to 1. */
  readonly share: number
  /** °C; undefined where nothing is stated. */
  readonly ambientC?: number
  /** Where it is, or how warm, is written and not known: it may carry less. */
  readonly isOpen: boolean
  readonly assumptions: readonly string[]
}

export const coolFuse: FuseHeat = { share: 1, isOpen: false, assumptions: [] }

/** By its ambient, and in a machinery space by no less than 50 °C. Where it states neither, its rating counts as it is. */
export function heatAround(device: Block): FuseHeat {
  const isOpen = ['ambient', 'place'].some((fact) => device.unread.has(fact) || device.blanks.has(fact))
  const stated = factOf(device, 'protection.ambient')?.value
  const isInSpace = factOf(device, 'protection.place')?.value === 'machinery-space'
  if (stated === undefined && !isInSpace) return { ...coolFuse, isOpen }
  const ambientC = Math.max(
    ...(stated === undefined ? [] : [celsius(stated)]),
    ...(isInSpace ? [machinerySpaceAmbientC] : []),
  )
  const share = ratingInAmbient(1, ambientC)
  return {
    share,
    ambientC,
    isOpen,
    assumptions: [
      ...(isInSpace && (stated === undefined || celsius(stated) < ambientC)
        ? [`ambient of the fuse or breaker is ${ambientC} °C, that of a machinery space`]
        : []),
      ...(share < 1 ? [lessInHeat] : []),
    ],
  }
}

/** `, over the 90 % of its rating that it carries at 60 °C`. */
export const heatWords = ({ share, ambientC }: FuseHeat): string =>
  share < 1
    ? `, over the ${formatShare(share, 3)} of its rating that it carries at ${formatNumber(ambientC ?? 0)} °C`
    : ''

const lessInHeat =
  'a fuse or breaker carries 0.5 % less for each kelvin above 40 °C: printed in one fuse maker’s guide for gG fuses; the figure of its own maker comes first'
