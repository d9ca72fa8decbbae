// What the house takes from the bank of the drive shortens its endurance: energy balance. Figures are invented.
import { expect, it } from 'vitest'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf } from '../../checks/marks.ts'
import { resultsIn } from '../results-in.ts'
import { boat } from './boat.ts'

const enduranceOf = (more: string): number => {
  const found = resultsIn(boat({ more })).results.find(({ figure }) => /endurance/.test(figure.id))
  const value = found?.amount?.value
  if (value === undefined) throw new Error('no endurance')
  return value
}
const cable = (name: string, from: string, to: string) =>
  `cable ${name} { from: ${from}  to: ${to}  conductor: 10 mm2  length: 1 m  insulation: 105 degC }\n`

it('a load halves the endurance where it takes as much as the drive', () => {
  const alone = enduranceOf('')
  // 210 Ah, 96 V, 80 % usable, 20 % of that kept: 210 · 96 · 0.8 · 0.8 Wh.
  const drive = (210 * 96 * 0.64 * 3600) / alone
  const load = (power: number, more = '') =>
    enduranceOf(`load lights { power: ${power} W ${more} }\n${cable('to-lights', 'house', 'lights')}`)
  expect(load(drive) / alone).toBeCloseTo(0.5, 3)
  expect(load(2 * drive, 'duty: 50 %') / alone).toBeCloseTo(0.5, 3)
})

it('that states a current takes it at its voltage, or at that of the bank', () => {
  const alone = enduranceOf('')
  const drive = (210 * 96 * 0.64 * 3600) / alone
  const load = (current: number, more = '') =>
    enduranceOf(`load lights { current: ${current} A ${more} }\n${cable('to-lights', 'house', 'lights')}`)
  // P = U I.
  expect(load(drive / 96) / alone).toBeCloseTo(0.5, 3)
  expect(load(drive / 100, 'voltage: 100 V') / alone).toBeCloseTo(0.5, 3)
  // Where both are stated, the larger counts.
  expect(load(drive / 96, 'power: 1 W') / alone).toBeCloseTo(0.5, 3)
  expect(load(0.001, `power: ${drive} W`) / alone).toBeCloseTo(0.5, 3)
})

it('counts behind a converter with what that loses, and not where no cable leads to it', () => {
  const alone = enduranceOf('')
  const drive = (210 * 96 * 0.64 * 3600) / alone
  const behind = `converter low { input: 72..120 V  output: 26..28 V  current: 200 A  efficiency: 80 % }
load lights { power: ${0.8 * drive} W }
${cable('in', 'house', 'low')}${cable('out', 'low', 'lights')}`
  expect(enduranceOf(behind) / alone).toBeCloseTo(0.5, 3)
  expect(enduranceOf(`load lights { power: ${drive} W }\n`)).toBe(alone)
})

it('that does not say what it draws leaves the endurance unknown, and is asked', () => {
  const text = boat({
    more: `job "x" { vessel: "y"  status: for-review }\nload lights { voltage: 24 V }\n${cable('to', 'house', 'lights')}`,
  })
  expect(resultsIn(text).results.find(({ figure }) => /endurance/.test(figure.id))?.amount).toBeUndefined()
  expect(findingsOf(text, allChecks).findings.map(({ check }) => check)).toContain('job/fact-missing')
})
