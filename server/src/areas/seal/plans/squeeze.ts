import { compression, squeezedAsWanted } from '../../../engineering/seal.ts'
import { type Block, factOf } from '../../../job/model.ts'
import type { Lookup } from '../../../store/lookup.ts'

/** How far a bellows is squeezed, in words, and how that stands to what its maker wants. */
export interface Squeeze {
  readonly found: string
  /** `148 mm - 121 mm = 27 mm`. */
  readonly sum: string
  /** Absent where the file does not say what is wanted. */
  readonly wanted?: string
  readonly within?: boolean
}

/** Undefined where the lengths are not said, or make no sense. */
export function squeezeOf(seal: Block, lookup: Lookup): Squeeze | undefined {
  const free = factOf(seal, 'seal.free-length')?.value
  const fitted = factOf(seal, 'seal.fitted-length')?.value
  const band = factOf(seal, 'seal.compression')?.value
  if (free === undefined || fitted === undefined) return undefined
  const squeeze = compression({ free, fitted })
  const [own, other] = [lookup.show(squeeze, 'length'), lookup.show(Math.abs(squeeze), 'length')]
  return {
    found: squeeze < 0 ? `stretched ${other}` : `compressed ${own}`,
    sum: `${lookup.show(free, 'length')} - ${lookup.show(fitted, 'length')} = ${own}`,
    ...(band && { wanted: lookup.showBand(band, 'length'), within: squeezedAsWanted(squeeze, band) }),
  }
}
