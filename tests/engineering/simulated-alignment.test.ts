// The plan on machines whose true pose is known only to the simulation. k = 2 promises that a value lies within U of the truth in some 95 % of cases
// (JCGM 100, 6.3.3), so that a "within" is wrong in at most 2.5 %: one side of the limit.
import { expect, it } from 'vitest'
import { tally } from './simulated-machine.ts'

it.each([0.1, 0.2])('two moves bring a machine within, gauge step %s of what is allowed', (share) => {
  const { withMargin, saidWithin, wrong } = tally(600, share)
  expect(withMargin.count).toBeGreaterThan(200)
  expect(withMargin.byTwo / withMargin.count).toBeGreaterThanOrEqual(0.99)
  expect(wrong / saidWithin).toBeLessThan(0.025)
})

it('with a gauge too coarse to tell, a machine is not called within wrongly', () => {
  const { saidWithin, wrong } = tally(600, 0.5)
  expect(wrong / Math.max(1, saidWithin)).toBeLessThan(0.025)
})
