// What a controller has to give for the rated power of its motor, against what it gives.
import { describe, expect, it } from 'vitest'
import { resultsIn } from '../results-in.ts'

const boat = (motor: string, controllers = 'controller { current: 220 A }') => `drive main {
  motor m { power: 15 kW  voltage: 58 V  ${motor} }
  ${controllers}
}
`

const resultOf = (text: string) => {
  const { results, findings } = resultsIn(text)
  const result = results.find(({ figure }) => figure.id === 'controller/motor-current')
  const isFound = findings.some(({ message }) => message.startsWith('The controller gives'))
  return { result, isFound }
}

describe('the current of the motor of a controller', () => {
  // 15000 / (√3 · 58 · 0.9 · 0.92) = 180.33 A; nine tenths are 162.3 A.
  it.each([
    ['160 A', 'outside'],
    ['163 A', 'within'],
    ['220 A', 'within'],
  ])('is held against %s: %s, and a finding says so too', (gives, verdict) => {
    const motor = 'power-factor: 0.9  efficiency: 92 %'
    const { result, isFound } = resultOf(boat(motor, `controller { current: ${gives} }`))
    expect(result?.amount.value).toBeCloseTo(180.33, 2)
    expect(result?.amount.assumptions).toEqual([])
    expect(result?.verdict).toBe(verdict)
    expect(isFound).toBe(verdict === 'outside')
  })

  it('assumes what the motor does not state', () => {
    expect(resultOf(boat('power-factor: 0.9')).result?.amount.assumptions).toEqual([
      'efficiency of the motor is 0.9: it is not stated',
    ])
  })

  it.each([
    ['of several controllers each gives a part', boat('', 'controller a { }  controller b { }')],
    ['the efficiency cannot be read', boat('efficiency: 92 percents')],
    ['the motor states no voltage', boat('').replace('voltage: 58 V', '')],
  ])('is not said where %s', (_, text) => {
    expect(resultOf(text).result).toBeUndefined()
  })

  it('has no limit where the controller states no current', () => {
    const { result } = resultOf(boat('', 'controller { efficiency: 96 % }'))
    expect(result?.amount.value).toBeGreaterThan(100)
    expect(result?.verdict).toBeUndefined()
  })
})
