// Steps with shims of both unit systems: what is said to be done makes the move that was chosen, by sums of the shims named.
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { correctionOf } from '../../../server/src/areas/alignment/plans/correction.ts'
import { heightsOf, stepFor } from '../../../server/src/areas/alignment/plans/steps.ts'
import { exactly } from '../../../server/src/quantity/uncertainty.ts'
import { blockIn } from '../job-text.ts'

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

// A foot that is off the line of the others by more is soft: 0.05 mm, common practice, no source.
it('no foot between the ends is left more than 0.05 mm off their line, though the machine would come inside', () => {
  const station = (name: string, at: number) =>
    ['port', 'starboard']
      .map((side) => `    foot ${name}-${side} { from-coupling: ${at} mm  across: 140 mm ${side} }\n`)
      .join('')
  // To be raised by 0, 0.07 and 0.14 mm: shims of 0.15 mm at the fore end alone would leave the middle 0.075 mm off.
  const { block, lookup } = blockIn(
    `drive main {
  coupling { kind: flexible  flange-diameter: 125 mm  gauge-diameter: 110 mm  gap-variation: max 0.03 mm  offset: max 0.05 mm }
  bed {
    adjuster: shims
    shims: 0.15 mm
${station('aft', 200)}${station('mid', 400)}${station('fwd', 600)}  }
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.01 mm
    gaps: top 1.84 mm, starboard 1.82 mm, bottom 1.80 mm, port 1.82 mm
    offsets: top 0.08 mm, starboard 0 mm, bottom -0.08 mm, port 0 mm
  }
}
`,
    'main.dry-1',
  )
  const outcome = correctionOf(block, lookup)
  if (!outcome.ok) throw new Error(outcome.fault.words)
  const rises = outcome.value.feet.map(({ step }) =>
    step.by === 'shims' ? (step.action === 'take out' ? -1 : 1) * step.thickness : 0,
  )
  expect(rises).toHaveLength(6)
  const [aft = 0, , mid = 0, , fwd = 0] = rises
  expect(Math.abs(mid - (aft + fwd) / 2)).toBeLessThanOrEqual(0.05e-3)
  expect(outcome.value.ways).toContainEqual([{ type: 'thinner-shim', thickness: 0.1e-3 }])
})

// A nut between the ends is run up until it touches, as near as 0.01 mm: common practice, no source.
it('no nut between the ends has to end further than 0.01 mm under its foot, though the line of the ends would be better', () => {
  const station = (name: string, at: number, more = '') =>
    ['port', 'starboard']
      .map(
        (side) => `    foot ${name}-${side} { from-coupling: ${at} mm  across: 140 mm ${side}  ${more} }\n`,
      )
      .join('')
  // To be raised by 1 mm, three flats of M16; the studs in the middle end 0.015 mm short of that.
  const { block, lookup } = blockIn(
    `drive main {
  coupling { kind: flexible  flange-diameter: 125 mm  gauge-diameter: 110 mm  gap-variation: max 0.10 mm  offset: max 0.15 mm }
  bed {
    adjuster: stud-and-nuts
    thread: M16
${station('aft', 200)}${station('mid', 400, 'travel-up: 0.985 mm')}${station('fwd', 600)}  }
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.01 mm
    gaps: top 1.80 mm, starboard 1.80 mm, bottom 1.80 mm, port 1.80 mm
    offsets: top -1 mm, starboard 0 mm, bottom 1 mm, port 0 mm
  }
}
`,
    'main.dry-1',
  )
  const outcome = correctionOf(block, lookup)
  if (!outcome.ok) throw new Error(outcome.fault.words)
  const rises = outcome.value.feet.map(({ moved }) => moved)
  const [aft = 0, , mid = 0, , fwd = 0] = rises
  expect(rises.every((rise) => rise > 0.5e-3)).toBe(true)
  expect((aft + fwd) / 2 - mid).toBeLessThanOrEqual(0.01e-3 + 1e-9)
})
