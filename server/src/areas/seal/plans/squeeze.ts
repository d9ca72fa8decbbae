import { compression, squeezedAsWanted } from '../../../engineering/seal.ts'
import { type Block, factOf } from '../../../job/model.ts'
import type { Band } from '../../../quantity/band.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { plan } from '../../../store/plan.ts'

/** How far a bellows is squeezed, and how that stands to what its maker wants. m, + shorter than free. */
export interface Squeeze {
  readonly size: number
  /** `148 mm - 121 mm = 27 mm`. */
  readonly sum: string
  /** Absent where the file does not say what is wanted. */
  readonly wanted?: Band
  readonly within?: boolean
}

/** Undefined where the lengths are not said. */
export const squeezeOf = plan((seal: Block, lookup: Lookup): Squeeze | undefined => {
  const free = factOf(seal, 'seal.free-length')?.value
  const fitted = factOf(seal, 'seal.fitted-length')?.value
  const wanted = factOf(seal, 'seal.compression')?.value
  if (free === undefined || fitted === undefined) return undefined
  const size = compression({ free, fitted })
  const show = (si: number) => lookup.show(si, 'length')
  return {
    size,
    sum: `${show(free)} - ${show(fitted)} = ${show(size)}`,
    ...(wanted && { wanted, within: squeezedAsWanted(size, wanted) }),
  }
})
