import { Matrix, QrDecomposition } from 'ml-matrix'

export type Estimate = {
  readonly values: readonly number[]
  readonly covariance: readonly (readonly number[])[]
}

/** Linear least squares: unknowns b that bring `rows` b nearest to `values`, each row weighted by
 * 1/standard². With `weighted: false` the rows count alike and the standards (which may then be 0) only
 * propagate. Rows must be of full column rank. Source: QR form of the normal equations, covariance G
 * diag(u²) Gᵀ for the linear estimate b = G y.
 * @example leastSquares([[1], [1]], [2, 4], [1, 1], { weighted: true }).values[0] // ≈ 3 */
export function leastSquares(
  rows: readonly (readonly number[])[],
  values: readonly number[],
  standards: readonly number[],
  { weighted }: { readonly weighted: boolean },
): Estimate {
  const weights = Matrix.diag(standards.map((u) => (weighted ? 1 / u : 1)))
  const design = new Matrix(rows.map((row) => [...row]))
  const gain = new QrDecomposition(weights.mmul(design)).solve(Matrix.eye(rows.length)).mmul(weights)
  const spread = gain.mmul(Matrix.diag([...standards]))
  return {
    values: gain.mmul(Matrix.columnVector([...values])).to1DArray(),
    covariance: spread.mmul(spread.transpose()).to2DArray(),
  }
}
