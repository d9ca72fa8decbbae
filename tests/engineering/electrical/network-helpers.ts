import { expect } from 'vitest'
import {
  type DcNetwork,
  type SolvedNetwork,
  solveNetwork,
} from '../../../server/src/engineering/electrical/dc-network.ts'

/** The solution of a network that has one. */
export function solved(network: DcNetwork): SolvedNetwork {
  const solution = solveNetwork(network)
  if (solution.outcome !== 'solved') throw new Error(`no solution: ${JSON.stringify(solution)}`)
  return solution
}

/** A figure within so much of what is expected. */
export const near = (actual: number | undefined, expected: number, by: number): void =>
  expect(Math.abs((actual ?? Number.NaN) - expected), `${actual} against ${expected}`).toBeLessThanOrEqual(by)

/** A figure within a part of what is expected. */
export const relative = (actual: number | undefined, expected: number, by: number): void =>
  near(actual, expected, by * Math.abs(expected) + 1e-12)

export const total = (of: readonly number[]): number => of.reduce((sum, one) => sum + one, 0)
