// Bends, supports, distances and lugs against the figures of the sources, and what must not get milder.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  leastBendRadius,
  leastOuterDiameter,
  lengthSpread,
  signalLimits,
  supportLimit,
} from '../../../server/src/engineering/electrical/cable-laying.ts'
import { lugOnStud, mostLugs, usualTorques } from '../../../server/src/engineering/electrical/terminal.ts'
import { boltSize } from '../../../server/src/quantity/bolt-size.ts'
import { OutOfRange } from '../../../server/src/quantity/out-of-range.ts'
import { badNumbers, exactly } from './outside.ts'

describe('a bend', () => {
  // A public table of a cable maker, fixed: 4 D up to 25 mm, 6 D above; class rules for ships 4 D without metal covering.
  it.each([
    [0.01, 0.04],
    [0.025, 0.1],
    [0.026, 0.156],
    [0.05, 0.3],
  ])('of a cable of %s m is at least %s m', (diameter, radius) => exactly(leastBendRadius(diameter), radius))

  it('of a thicker cable is never tighter, and never below 4 D', () => {
    const size = fc.double({ min: 1e-3, max: 0.2, noNaN: true })
    fc.assert(
      fc.property(size, size, (one, other) => {
        const [thin, thick] = [Math.min(one, other), Math.max(one, other)]
        expect(leastBendRadius(thick)).toBeGreaterThanOrEqual(leastBendRadius(thin))
        expect(leastBendRadius(thin)).toBeGreaterThanOrEqual(4 * thin)
      }),
    )
  })

  it('of a cable without a diameter follows from its copper: a circle of 95 mm² is 11.0 mm across', () => {
    exactly(leastOuterDiameter(95e-6), 0.01099808)
    exactly(leastOuterDiameter(Math.PI * 1e-6), 0.002)
  })

  it('refuses what is no diameter', () => {
    for (const bad of badNumbers) expect(() => leastBendRadius(bad)).toThrow(OutOfRange)
    for (const bad of badNumbers) expect(() => leastOuterDiameter(bad)).toThrow(OutOfRange)
  })
})

describe('supports and signal cables', () => {
  // ISO 10133:2012, 7.3 and 7.4 (public excerpt): 450 mm, battery conductors and sheathed ones 300 mm. ABYC, summarised: 18 in.
  it('are as the rules have them, without rules as ISO', () => {
    expect(supportLimit({ rules: 'iso', isClose: false }).metres).toBe(0.45)
    expect(supportLimit({ rules: 'iso', isClose: true }).metres).toBe(0.3)
    exactly(supportLimit({ rules: 'abyc', isClose: true }).metres, 0.4572)
    for (const isClose of [true, false])
      expect(supportLimit({ rules: undefined, isClose }).metres).toBeLessThanOrEqual(
        Math.min(
          supportLimit({ rules: 'iso', isClose }).metres,
          supportLimit({ rules: 'abyc', isClose }).metres,
        ),
      )
  })

  // Manuals of industrial drives: at least 100 mm in parallel (one); motor to control 500 mm, supply to control 200 mm (another).
  it('keep the distance of the stricter source', () => {
    expect(signalLimits('three-phase')).toEqual({ least: 0.1, safe: 0.5 })
    expect(signalLimits('dc')).toEqual({ least: 0.1, safe: 0.2 })
  })
})

describe('the lengths of the phases', () => {
  it('spread by the longest less the shortest over the mean', () => {
    exactly(lengthSpread([1.8, 1.82, 1.79]) ?? 0, 0.03 / (5.41 / 3))
    expect(lengthSpread([2, 2, 2])).toBe(0)
    expect(lengthSpread([2])).toBeUndefined()
    expect(lengthSpread([])).toBeUndefined()
    for (const bad of badNumbers) expect(() => lengthSpread([2, bad])).toThrow(OutOfRange)
  })

  it('does not depend on their order or unit, and grows with the longest', () => {
    const lengths = fc.array(fc.double({ min: 0.1, max: 50, noNaN: true }), { minLength: 2, maxLength: 4 })
    fc.assert(
      fc.property(lengths, fc.double({ min: 0.1, max: 10, noNaN: true }), (all, by) => {
        const spread = lengthSpread(all) ?? 0
        expect(lengthSpread([...all].reverse())).toBeCloseTo(spread, 9)
        expect(lengthSpread(all.map((length) => length * by))).toBeCloseTo(spread, 9)
        expect(spread).toBeGreaterThanOrEqual(0)
        expect(spread).toBeLessThanOrEqual(all.length)
      }),
    )
  })
})

describe('a lug on a stud', () => {
  const size = (text: string) => boltSize(text) ?? Number.NaN
  it.each([
    ['M8', 'M10', 'too-small'],
    ['M10', 'M10', 'fits'],
    ['M10', 'M8', 'too-large'],
    ['M8', '5/16', 'fits'],
    ['5/16', 'M8', 'fits'],
    ['M10', '3/8', 'too-large'],
    ['3/8', 'M10', 'too-small'],
    ['3/8', '3/8-16 UNC', 'fits'],
    ['M6', '1/4', 'too-small'],
    ['1/2', 'M12', 'too-large'],
  ])('for %s on %s: %s', (lug, stud, fit) => {
    expect(lugOnStud({ lug: size(lug), stud: size(stud) })).toBe(fit)
  })

  it('refuses what is no thread', () => {
    for (const bad of badNumbers) {
      expect(() => lugOnStud({ lug: bad, stud: 0.01 })).toThrow(OutOfRange)
      expect(() => lugOnStud({ lug: 0.01, stud: bad })).toThrow(OutOfRange)
      expect(() => usualTorques(bad)).toThrow(OutOfRange)
    }
    expect(mostLugs).toBe(4)
  })

  it.each([
    ['M10', 0.01],
    ['M10x1', 0.01],
    ['m 8', 0.008],
    ['3/8', 0.009525],
    ['3/8 in', 0.009525],
    ['"1/2"'.slice(1, -1), 0.0127],
    ['1-1/8', 0.028575],
    ['#10', 0.004826],
    ['#10-32 UNF', 0.004826],
    ['M0', undefined],
    ['M200', undefined],
    ['1/0', undefined],
    ['10', undefined],
    ['X', undefined],
    ['', undefined],
  ])('thread %j is %s m across', (text, diameter) => {
    const found = boltSize(text)
    if (diameter === undefined) expect(found).toBeUndefined()
    else exactly(found ?? 0, diameter)
  })

  // DIN 43673 as a tutorial prints it: M6 8, M8 20, M10 40, M12 70, M16 120 N·m; an inverter manual: 2.5, 6, 10, 14, 25.
  it.each([
    ['M6', 8, 2.5],
    ['M8', 20, 6],
    ['M10', 40, 10],
    ['M12', 70, 14],
    ['M16', 120, 25],
  ])('has usual torques for %s by the kind of joint', (thread, bar, screw) => {
    const by = new Map(usualTorques(size(thread)).map((one) => [one.joint, one.high]))
    expect([by.get('copper bar'), by.get('screw terminal')]).toEqual([bar, screw])
  })

  it('has none for a thread that no source has', () => {
    expect(usualTorques(0.0095)).toEqual([])
    expect(usualTorques(0.04)).toEqual([])
    expect(usualTorques(0.002)).toEqual([])
  })
})
