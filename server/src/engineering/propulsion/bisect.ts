/** Where a function of one number, 0 or below at `low` and 0 or above at `high`, passes zero, to the last bits of a double: bisection, so any function that
 * changes its sign there will do. Source: definition.
 * @example bisect((x) => x * x - 2, 0, 2) // ≈ 1.41421 */
export function bisect(of: (x: number) => number, low: number, high: number): number {
  let [from, to] = [low, high]
  for (let i = 0; i < 100; i++) {
    const middle = (from + to) / 2
    if (middle <= from || middle >= to) break
    if (of(middle) < 0) from = middle
    else to = middle
  }
  return (from + to) / 2
}

/** The first place from `low` to `high` where a function rises from below zero to zero or above, looked for in `steps` equal steps and then by bisection.
 * Undefined if it stays below zero; `low` if it begins above. A pair of crossings within one step is not seen. Source: definition.
 * @example firstCrossing((x) => x - 1, 0, 2, 10) // ≈ 1 */
export function firstCrossing(
  of: (x: number) => number,
  low: number,
  high: number,
  steps: number,
): number | undefined {
  let before = low
  if (of(low) >= 0) return low
  for (let i = 1; i <= steps; i++) {
    const next = low + ((high - low) * i) / steps
    if (of(next) >= 0) return bisect(of, before, next)
    before = next
  }
  return undefined
}
