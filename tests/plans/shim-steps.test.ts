// Steps with shims of both unit systems: what is said to be done makes the move that was chosen, by sums of the shims named.
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { heightsOf, stepFor } from '../../server/src/plans/steps.ts'
import { exactly } from '../../server/src/quantity/uncertainty.ts'

// An inch is 25.4 mm exactly (NIST SP 811, appendix B).
const inch = 0.0254
const shim = fc.oneof(
  fc.integer({ min: 1, max: 40 }).map((n) => n * 0.05e-3),
  fc.integer({ min: 1, max: 40 }).map((n) => (n * inch) / 1000),
  fc.integer({ min: 1, max: 8 }).map((n) => (n * inch) / 64),
)
const zero = exactly(0)
const foot = { name: 'aft-port', x: 0.2, y: -0.1 }
const sum = (pieces: readonly number[]) => pieces.reduce((total, piece) => total + piece, 0)

it('any move that packs can make is said as shims that make it', () => {
  fc.assert(
    fc.property(
      fc.uniqueArray(shim, { minLength: 1, maxLength: 5 }),
      fc.option(fc.array(shim, { maxLength: 4 }).map(sum), { nil: undefined }),
      fc.double({ min: -4e-3, max: 4e-3, noNaN: true }),
      (stock, pack, wanted) => {
        const adjuster = { by: 'shims', stock } as const
        const heights = heightsOf({ ...foot, ...(pack !== undefined && { pack }) }, adjuster)
        // The pack that is there comes out whole too.
        for (const asked of [wanted, -(pack ?? 0)]) {
          const move = heights.from(asked)
          if (move === undefined || Math.abs(move) < 1e-9) continue
          const correction = { ...foot, vertical: exactly(asked), horizontal: zero }
          const { step, moved } = stepFor(correction, { vertical: move, horizontal: 0 }, adjuster, {
            ...(pack !== undefined && { pack }),
          })
          expect(moved).toBe(move)
          if (step.by !== 'shims') throw new Error(step.by)
          if (step.action === 'put in') expect(sum(step.pieces)).toBeCloseTo(move, 7)
          else if (step.action === 'make') expect(sum(step.pieces)).toBeCloseTo((pack ?? 0) + move, 7)
          else {
            expect(step.action).toBe('take out')
            expect(move).toBeLessThan(0)
            expect(step.thickness).toBe(-move)
          }
        }
      },
    ),
    { numRuns: 1000 },
  )
})
