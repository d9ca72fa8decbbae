// A battery with nothing between it and its controller that a person can open: common practice. Kirchhoff's current law for what a switch breaks.
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf } from '../../checks/marks.ts'

const battery = (name: string) => `battery ${name} { nominal: 96 V  window: 84..108 V }\n`
const cable = (name: string, from: string, to: string, more = '') =>
  `cable ${name} { from: ${from}  to: ${to}  conductor: 95 mm2  length: 2 m  insulation: 105 degC  place: open  ${more} }\n`
const rest = (status: string) => `job "Launch" { vessel: "Launch 07"  status: ${status} }
drive main {
  motor m { power: 8.4 kW  efficiency: 100 %  voltage: 50 V  power-factor: 1 }
  controller { input: 72..120 V  efficiency: 100 % }
}
`
const bus = `busbar bus { current: 300 A }\n${cable('feed', 'bus', 'main.controller')}`
const lead = (name: string, more = '') =>
  `${battery(name)}${cable(`${name}-lead`, name, 'bus')}protection ${name}-fuse { kind: fuse  rating: 250 A  in: ${name}-lead  at: 0.1 m ${more} }\n`
const isolator = (within: string, more = '') =>
  `isolator ${within}-switch { in: ${within}  at: 0.3 m  ${more} }\n`
const found = (text: string, check = 'battery/no-isolator', status = 'for-review') =>
  findingsOf(`${rest(status)}${text}`, allChecks).findings.filter((one) => one.check === check)
const messages = (text: string, check?: string) => found(text, check).map(({ message }) => message)
const none = ['No isolator is between this battery and the controller.']

describe('a battery without an isolator', () => {
  it.each([
    ['draft', []],
    ['for-review', ['warning']],
    ['issued', ['error']],
  ])('counts as much as the status asks: %s', (status, severities) => {
    expect(found(`${lead('a')}${bus}`, undefined, status).map((one) => one.severity)).toEqual(severities)
  })

  it('is one finding for those that are together', () => {
    const [first, ...more] = found(`${lead('a')}${lead('b')}${bus}`)
    expect(more).toEqual([])
    expect(first?.detail).toBe('The same holds for b.')
    expect(messages(`${lead('a')}${lead('b')}${isolator('b-lead')}${bus}`)).toEqual(none)
    expect(messages(`${lead('a')}${lead('b')}${isolator('feed')}${bus}`)).toEqual([])
    expect(messages(`${lead('a')}${isolator('a-lead')}${lead('b')}${isolator('b-lead')}${bus}`)).toEqual([])
  })

  it('has none in a contactor, in a switch of the negative alone, or in one that another battery has', () => {
    expect(messages(`${lead('a')}${bus}contactor k { in: feed  at: 1 m }\n`)).toEqual(none)
    expect(messages(`${lead('a')}${bus}${isolator('feed', 'poles: negative')}`)).toEqual(none)
    const own = `${lead('a')}${isolator('a-lead')}${bus}${battery('c')}${cable('direct', 'c', 'main.controller')}`
    expect(messages(own)).toEqual(none)
  })

  it('has one in a breaker whose maker says so', () => {
    const breaker = lead('a', 'isolates: yes').replace('kind: fuse', 'kind: circuit-breaker')
    expect(messages(`${breaker}${bus}`)).toEqual([])
    expect(messages(`${breaker.replace('isolates: yes', 'isolates: no')}${bus}`)).toEqual(none)
  })

  it('that feeds no controller, or whose cables are not written, is not asked for one', () => {
    expect(messages(`${battery('a')}load l { power: 96 W }\n${cable('c', 'a', 'l')}`)).toEqual([])
    expect(messages(battery('a'))).toEqual([])
  })

  it('in series is one with its string', () => {
    const half = (name: string) => `battery ${name} { nominal: 48 V  window: 42..54 V }\n`
    const string = `${half('a')}${half('b')}${cable('link', 'a', 'b', 'pole: series')}${cable('feed', 'b', 'main.controller')}`
    expect(messages(string)).toEqual(none)
    expect(messages(`${string}${isolator('feed')}`)).toEqual([])
    expect(messages(`${string}${isolator('link')}`)).toEqual([])
  })
})

describe('what a switch breaks', () => {
  // 8.4 kW at 84 V is 100 A, and a little more for what the cables lose.
  it.each([
    ['isolator', '99 A', 1],
    ['isolator', '110 A', 0],
    ['contactor', '20 A', 1],
  ])('is at least what flows through it: %s %s', (kind, amps, count) => {
    const text = `${lead('a')}${bus}${kind} s { in: feed  at: 1 m  current: 300 A  interrupts: ${amps} }\n`
    expect(messages(text, 'switch/interrupts-too-little')).toHaveLength(count)
  })
})
