import { expect, it } from 'vitest'
import { fuzzCrowd, growthOf } from './crowd.ts'
import { measureReopened } from './reopened.ts'

// The goal of a long run is 1.3 (npm run fuzz). Here the code is still being compiled, which the live heap shows too.
const loose = 1.6

it('many editors on one server are all answered, and it holds no more afterwards', {
  timeout: 300_000,
}, async () => {
  const { faults, held } = await fuzzCrowd({ seed: 2, editors: 3, steps: 60, more: (rounds) => rounds < 3 })
  expect(faults).toEqual([])
  expect(growthOf(held)).toBeLessThan(loose)
})

it('of texts that were opened and closed nothing stays', { timeout: 300_000 }, async () => {
  const [early, late] = await measureReopened(10, [10, 40])
  expect((late?.heap ?? Number.NaN) / (early?.heap ?? Number.NaN)).toBeLessThan(1.2)
})
