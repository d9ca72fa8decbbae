// Short circuits at fuses and breakers, against Ohm's and Kirchhoff's laws written out here. 95 mm²: 0.210 Ω/km at 20 °C (IEC 60228).
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { faultsAt } from '../../../server/src/areas/electrical/plans/faults.ts'
import { allChecks } from '../../../server/src/areas/index.ts'
import { faultCurrents } from '../../../server/src/engineering/electrical/dc-network.ts'
import { pathsFrom } from '../../../server/src/engineering/electrical/fault-paths.ts'
import { findingsOf } from '../../checks/marks.ts'
import { blockIn } from '../job-text.ts'
import { loopAt105 } from './with-drop.ts'

const bank = (name = 'b', ohm = '14 mohm') =>
  `battery ${name} { nominal: 96 V  window: 84..108 V  internal-resistance: ${ohm} }\n`
const cable = (name: string, from: string, to: string, length: number) =>
  `cable ${name} { from: ${from}  to: ${to}  conductor: 95 mm2  length: ${length} m  insulation: 105 degC  place: open }\n`
const fuse = (name: string, within: string, rating = 250, at = 0) =>
  `protection ${name} { kind: fuse  rating: ${rating} A  interrupts: 50 kA  voltage: 125 V  in: ${within}  at: ${at} m }\n`
const load = 'load l { power: 4 kW }\n'
const faultsOf = (text: string, name: string) => {
  const { block, lookup } = blockIn(text, name)
  return faultsAt(block, lookup)
}
const found = (text: string) =>
  findingsOf(text, allChecks).findings.flatMap(({ check, message }) =>
    check === 'protection/cannot-open' ? [message] : [],
  )
const cold = (length: number) => length * 2 * 0.21e-3
const hot = (length: number) => length * loopAt105(0.21)

describe('one battery', () => {
  const text = `${bank()}${load}${cable('f', 'b', 'l', 40)}${fuse('main', 'f', 250, 1)}`
  it('gives most at the fuse, with cold copper and full', () => {
    expect(faultsOf(text, 'main')?.highest).toBeCloseTo(108 / (0.014 + cold(1)), 6)
  })
  it('gives least at the far end, with hot copper and nearly empty', () => {
    expect(faultsOf(text, 'main')?.least).toMatchObject({
      amps: expect.closeTo(84 / (0.014 + hot(40)), 5),
      opens: 400,
      at: 'cable f',
    })
  })
  it('opens no fuse through a cable that is too long, which no check of ratings finds', () => {
    // 1.6 · 250 A = 400 A (IEC 60269-1, from memory) flow through 0.21 Ω: 84 V / 400 A.
    const long = (length: number) =>
      `${bank()}load l { power: 200 W }\n${cable('f', 'b', 'l', length)}${fuse('main', 'f')}`
    const most = (84 / 400 - 0.014) / hot(1)
    expect(found(long(most * 0.99))).toEqual([])
    expect(found(long(most * 1.01))).toEqual([
      'A short circuit gives 399 A at the far end of f; the fuse or breaker needs 400 A.'.replace(
        '399',
        String(Math.floor(84 / (0.014 + hot(most * 1.01)))),
      ),
    ])
  })
})

describe('two batteries on a busbar', () => {
  const two = (more: string, ratings = [250, 250] as readonly [number, number]) =>
    `${bank('b')}${bank('s')}busbar bus { current: 600 A  voltage: 150 V }\n${cable('one', 'b', 'bus', 2)}${cable('two', 's', 'bus', 2)}${fuse('f1', 'one', ratings[0])}${fuse('f2', 'two', ratings[1])}${load}${cable('c', 'bus', 'l', 3)}${more}`

  it('add up at a fuse behind it', () => {
    const text = two(fuse('branch', 'c', 100))
    expect(faultsOf(text, 'branch')?.highest).toBeCloseTo(108 / ((0.014 + cold(2)) / 2), 5)
  })

  it('count alone for what must open: the other may be off', () => {
    const text = two(fuse('branch', 'c', 100))
    expect(faultsOf(text, 'branch')?.least?.amps).toBeCloseTo(84 / (0.014 + hot(2) + hot(3)), 2)
    expect(faultsOf(text, 'branch')?.least?.opens).toBeCloseTo(160, 9)
    // Up to the branch fuse only, the other lead as far as its own fuse at the battery.
    expect(faultsOf(text, 'f1')?.least?.amps).toBeCloseTo(84 / (0.014 + hot(2) + hot(2)), 2)
  })

  it('may share a fault so that neither fuse opens, though each alone would', () => {
    // One alone: 84 / (14 + 2·0.56 + L·0.56 mΩ). Both: half of 84 / ((14 + 2·0.56)/2 + L·0.56 mΩ).
    const length = 250
    const shared = 84 / ((0.014 + hot(2)) / 2 + hot(length)) / 2
    const alone = 84 / (0.014 + hot(2) + hot(length))
    const rating = Math.round(((shared + alone) / 2 / 1.6) * 10) / 10
    const text = two('', [rating, rating]).replace(cable('c', 'bus', 'l', 3), cable('c', 'bus', 'l', length))
    expect(alone).toBeGreaterThan(1.6 * rating)
    expect(faultsOf(text, 'f1')?.least?.amps).toBeCloseTo(shared, 4)
    expect(found(text)).toHaveLength(2)
    // With a smaller fuse in one of them that opens first, the other carries it alone.
    const small = two('', [rating, Math.round(shared / 2)]).replace(
      cable('c', 'bus', 'l', 3),
      cable('c', 'bus', 'l', length),
    )
    expect(found(small)).toEqual([])
  })

  it('leave a smaller fuse before it to open', () => {
    const text = `${bank()}${load}isolator i { current: 600 A }\n${cable('lead', 'b', 'i', 1)}${fuse('small', 'lead', 100)}${cable('c', 'i', 'l', 150)}${fuse('large', 'c', 630, 1)}`
    expect(faultsOf(text, 'large')?.least?.opens).toBe(160)
    expect(found(text)).toEqual([])
  })
})

describe('a ring', () => {
  const text = `${bank()}busbar bus { }\nbusbar far { }\n${cable('lead', 'b', 'bus', 1)}${cable('x', 'bus', 'far', 1)}${cable('y', 'bus', 'far', 9)}${fuse('fx', 'x')}${fuse('fy', 'y')}${load}${cable('c', 'far', 'l', 2)}`
  it('is opened by each of its fuses in turn: what the longer way lets through counts', () => {
    expect(faultsOf(text, 'fy')?.least?.amps).toBeCloseTo(84 / (0.014 + hot(1 + 9 + 2)), 4)
  })
})

it('the way of one path never carries more than the network lets through (Rayleigh)', () => {
  const link = fc.record({
    ends: fc.tuple(fc.constantFrom('a', 'b', 'c', 'd', 'e'), fc.constantFrom('a', 'b', 'c', 'd', 'e')),
    resistance: fc.integer({ min: 1, max: 1000 }).map((milli) => milli / 1000),
  })
  fc.assert(
    fc.property(fc.array(link, { minLength: 1, maxLength: 10 }), (links) => {
      const network = { links, sources: [{ negative: '-', positive: 'a', emf: 100, resistance: 0.1 }] }
      for (const [place, { resistance }] of pathsFrom('a', links)) {
        const [amps = 0] = faultCurrents(network, [[place, '-']])
        expect(100 / (0.1 + resistance)).toBeLessThanOrEqual(amps * (1 + 1e-9))
      }
    }),
  )
})

it('nothing that is joined at random throws or is not finite', () => {
  const name = fc.constantFrom('b', 's', 'bus', 'l', 'i', 'x', 'y')
  fc.assert(
    fc.property(fc.array(fc.tuple(name, name, fc.integer({ min: 0, max: 3 })), { maxLength: 6 }), (all) => {
      const text = `${bank()}${bank('s', '1 mohm')}busbar bus { }\n${load}isolator i { current: 600 A }\n${all
        .map(
          ([from, to, fuses], i) =>
            `${cable(`k${i}`, from, to, i + 1)}${Array.from({ length: fuses }, (_, n) => fuse(`f${i}${n}`, `k${i}`, 100, n)).join('')}`,
        )
        .join('')}`
      const { findings } = findingsOf(text, allChecks)
      expect(findings.filter(({ check }) => check === 'job/internal-error')).toEqual([])
      expect(findings.map(({ message }) => message).join()).not.toMatch(/NaN|Infinity/)
    }),
    { numRuns: 60 },
  )
}, 60_000)
