import type { Heights } from '../adjuster-heights.ts'
import { byStation, type Foot } from './feet.ts'
import { tiny } from './height-walk.ts'
import type { AxisError } from './planes.ts'

/** Heights that may still be looked up, counted down. */
export type Tries = { left: number }

/** Feet at one distance from the coupling, which are moved alike. */
export type Station = {
  readonly x: number
  /** Way from the aft station to the fore one, 0 to 1. */
  readonly share: number
  readonly feet: readonly number[]
  /** What a unit of height at this station does to the axis: nothing between the ends, which alone carry. */
  readonly per: AxisError
  /** Heights that all its feet have. */
  readonly heights: Heights
}

/** Feet by station, from aft: those less than a millimetre apart along the shaft stand at one. The axis is the straight line through the end
 * stations. Looking for a height that all feet of a station have takes `tries`, and where there are none left finds none. m. [derived]
 * @example stationsOf([0.2, 0.6].map((x) => ({ name: `${x}`, x, y: 0, heights: stepHeights(1e-4) })), { left: 100 })[1].per.slope // ≈ 2.5 */
export function stationsOf(
  feet: readonly (Foot & { readonly heights: Heights })[],
  tries: Tries,
): readonly Station[] {
  const groups = byStation(feet)
  const [aft = 0, fore = 0] = [groups[0]?.x, groups.at(-1)?.x]
  return groups.map(({ x, feet: members }) => {
    return {
      x,
      share: (x - aft) / (fore - aft),
      feet: members,
      per: perUnit(x, aft, fore),
      heights: common([...new Set(members.flatMap((i) => feet[i]?.heights ?? []))], tries),
    }
  })
}

/** A line that rises by one at this station, and not at the other end; level where the station is no end. */
function perUnit(x: number, aft: number, fore: number): AxisError {
  if (x !== aft && x !== fore) return { offset: 0, slope: 0 }
  const other = x === aft ? fore : aft
  return { offset: other / (other - x), slope: 1 / (x - other) }
}

/** Heights that every one of some feet has. */
function common(all: readonly Heights[], tries: Tries): Heights {
  const [only, ...others] = all
  if (only && others.length === 0) return only
  /** Goes from one foot to the next until they agree: a foot that has a height less far on is asked again. */
  const agreed = (
    height: number,
    next: (of: Heights, from: number) => number | undefined,
  ): number | undefined => {
    let [at, agreeing] = [height, 0]
    for (let i = 0; i < all.length || tries.left > 0; i++) {
      // The first round comes with the height itself.
      if (i >= all.length) tries.left -= 1
      const one = all[i % all.length]
      const found = one && next(one, at)
      if (found === undefined) return undefined
      agreeing = Math.abs(found - at) <= tiny && i > 0 ? agreeing + 1 : 1
      at = found
      if (agreeing === all.length) return at
    }
    return undefined
  }
  return {
    from: (height) => agreed(height, (of, at) => of.from(at)),
    upTo: (height) => agreed(height, (of, at) => of.upTo(at)),
  }
}
