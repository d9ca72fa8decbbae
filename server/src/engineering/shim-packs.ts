/** Packs of shims under a foot. */
import { inRange } from './guard.ts'

/** Shims of one pack, thickest first, their sum, and what is then still missing (wanted less sum), m. */
type ShimPack = {
  readonly pieces: readonly number[]
  readonly thickness: number
  readonly left: number
}

/** Sums (m) nearer to each other than this count as the same. */
const alike = 1e-9

/** The different thicknesses of a stock, thickest first: 1 to 41 of 1 µm to 0.1 m, else OutOfRange. One more than a job may list (40): a thinner
 * one is tried beside them. */
function thicknesses(stock: readonly number[]): readonly number[] {
  const sizes = [...new Set(stock.map((t) => inRange('shim thickness (m)', t, 1e-6, 0.1)))]
  inRange('number of shim thicknesses', sizes.length, 1, 41)
  return sizes.sort((a, b) => b - a)
}

/** Thicknesses (whole nanometres, which a 64th of an inch is too) of all packs of at most 4 shims, each as often as wanted, ascending; none at
 * all is 0. Stock in m, 1 to 41 thicknesses of 1 µm to 0.1 m, else OutOfRange.
 * @example packSums([0.0002])[4] // 800000 */
export function packSums(stock: readonly number[]): ArrayLike<number> {
  const sizes = [0, ...thicknesses(stock).map((t) => Math.round(t * 1e9))]
  const sums = new Int32Array(
    (sizes.length * (sizes.length + 1) * (sizes.length + 2) * (sizes.length + 3)) / 24,
  )
  let count = 0
  for (const [i, a] of sizes.entries())
    for (let j = i; j < sizes.length; j++)
      for (let k = j; k < sizes.length; k++)
        for (let l = k; l < sizes.length; l++)
          sums[count++] = a + (sizes[j] ?? 0) + (sizes[k] ?? 0) + (sizes[l] ?? 0)
  sums.sort()
  return sums.filter((sum, i) => sum !== sums[i - 1])
}

/** Pack of at most 4 shims out of `stock` thicknesses, any of them as often as wanted, that comes nearest to a thickness. Exact search; on
 * ties fewest pieces, then the thinner pack, then the one with the thickest piece. Thickness is that of the whole pack, 0 to 1 m: what has to
 * go in, or present pack plus correction where the foot goes down (else OutOfRange; a pack cannot be thinner than nothing). Stock as
 * `packSums`. At most 3 to 4 pieces: Bachus & Custodio, Know and Understand Centrifugal Pumps.
 * @example shimPack(0.8e-3, [0.1e-3, 0.2e-3, 0.5e-3]).pieces // [0.5e-3, 0.2e-3, 0.1e-3] */
export function shimPack(thickness: number, stock: readonly number[]): ShimPack {
  const wanted = inRange('thickness of the pack (m)', thickness, 0, 1)
  const sizes = thicknesses(stock)
  const halves = [[], ...sizes.map((a) => [a]), ...sizes.flatMap((a, i) => sizes.slice(i).map((b) => [a, b]))]
    .map((pieces) => ({ pieces, sum: pieces.reduce((total, piece) => total + piece, 0) }))
    .sort((a, b) => a.sum - b.sum)
  let best: ShimPack = { pieces: [], thickness: 0, left: wanted }
  // Two halves of at most two: as the one grows the other shrinks, so one pass meets every pair that comes near.
  let upper = halves.length - 1
  for (const half of halves) {
    while (upper > 0 && half.sum + (halves[upper]?.sum ?? 0) > wanted + alike) upper -= 1
    const nearest = [halves[upper]?.sum ?? 0, halves[upper + 1]?.sum ?? Number.POSITIVE_INFINITY]
    for (const at of nearest)
      for (let i = firstAt(at); Math.abs((halves[i]?.sum ?? Number.POSITIVE_INFINITY) - at) <= alike; i++)
        best = better(best, half.pieces, halves[i]?.pieces ?? [], wanted)
  }
  return best

  function firstAt(sum: number): number {
    let i = Math.min(upper + 1, halves.length - 1)
    while (i > 0 && (halves[i - 1]?.sum ?? 0) >= sum - alike) i -= 1
    return i
  }
}

function better(best: ShimPack, one: readonly number[], other: readonly number[], wanted: number): ShimPack {
  const pieces = [...one, ...other].sort((a, b) => b - a)
  const thickness = pieces.reduce((total, piece) => total + piece, 0)
  const left = wanted - thickness
  const gain = Math.abs(best.left) - Math.abs(left)
  const fewer = best.pieces.length - pieces.length
  const thinner = best.thickness - thickness
  const wins =
    Math.abs(gain) > alike
      ? gain > 0
      : fewer !== 0
        ? fewer > 0
        : Math.abs(thinner) > alike
          ? thinner > 0
          : (pieces[0] ?? 0) > (best.pieces[0] ?? 0)
  return wins ? { pieces, thickness, left } : best
}
