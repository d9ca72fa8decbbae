import { Matrix, QrDecomposition } from 'ml-matrix'

export type Estimate = {
  readonly values: readonly number[]
  readonly covariance: readonly (readonly number[])[]
}

/** Estimates from values (and their standards) that stand in the same rows each time. */
export type Estimator = (values: readonly number[], standards: readonly number[]) => Estimate

/** Linear least squares for fixed rows: unknowns b that bring `rows` b nearest to the values given later, each row
 * weighted by the square of its weight. Rows must be of full column rank. Worked out once for many sets of
 * values: the same machine with other moves. Source: QR form of the normal equations, covariance G diag(u²) Gᵀ
 * for the linear estimate b = G y.
 * @example estimator([[1], [1]], [1, 1])([2, 4], [1, 1]).values[0] // ≈ 3 */
export function estimator(rows: readonly (readonly number[])[], weights: readonly number[]): Estimator {
  const key = `${rows.join(';')} ${weights.join(',')}`
  const known = kept.get(key)
  if (known) return known
  const made = newEstimator(rows, weights)
  if (kept.size === maxKept) kept.clear()
  kept.set(key, made)
  return made
}

/** The same rows come again and again: flanges are read at the same four places, and a machine keeps its feet. */
const kept = new Map<string, Estimator>()
const maxKept = 64

function newEstimator(rows: readonly (readonly number[])[], weights: readonly number[]): Estimator {
  const weighting = Matrix.diag([...weights])
  const design = new Matrix(rows.map((row) => [...row]))
  const gain = new QrDecomposition(weighting.mmul(design))
    .solve(Matrix.eye(rows.length))
    .mmul(weighting)
    .to2DArray()
  const sum = (row: readonly number[], of: (i: number) => number) =>
    row.reduce((total, g, i) => total + g * of(i), 0)
  return (values, standards) => ({
    values: gain.map((row) => sum(row, (i) => values[i] ?? Number.NaN)),
    covariance: gain.map((a) =>
      gain.map((b) => sum(a, (i) => (b[i] ?? Number.NaN) * (standards[i] ?? Number.NaN) ** 2)),
    ),
  })
}

/** Linear least squares: unknowns b that bring `rows` b nearest to `values`, each row weighted by
 * 1/standard². With `weighted: false` the rows count alike and the standards (which may then be 0) only
 * propagate. Source and conditions: as `estimator`.
 * @example leastSquares([[1], [1]], [2, 4], [1, 1], { weighted: true }).values[0] // ≈ 3 */
export const leastSquares = (
  rows: readonly (readonly number[])[],
  values: readonly number[],
  standards: readonly number[],
  { weighted }: { readonly weighted: boolean },
): Estimate =>
  estimator(
    rows,
    standards.map((u) => (weighted ? 1 / u : 1)),
  )(values, standards)
