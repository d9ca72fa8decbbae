// The direction of a motor with its phases in any order, against the published table and by geometry.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  pairsToExchange,
  phaseOrder,
  standardRotation,
} from '../../../server/src/engineering/electrical/phase-order.ts'
import type { PhasePair } from '../../../server/src/engineering/electrical/phases.ts'
import {
  aheadRotation,
  motorRotation,
  otherWay,
  screwHand,
  shaftRotation,
} from '../../../server/src/engineering/rotation.ts'

const supply = ['L1', 'L2', 'L3']
const motor = ['U', 'V', 'W']
const land = (ends: readonly string[]): readonly PhasePair[] => ends.map((end, i) => [supply[i] ?? '', end])

/** The sum over the supply of the turn of the field: three windings a third of a turn apart, currents a third of a period apart. */
function fieldTurns(ends: readonly string[]): number {
  const at = (time: number) =>
    ends.map((end, i) => ({
      amps: Math.cos(time - (i * 2 * Math.PI) / 3),
      angle: (motor.indexOf(end) * 2 * Math.PI) / 3,
    }))
  const angleOf = (time: number) => {
    const parts = at(time)
    const sum = (f: (angle: number) => number) =>
      parts.reduce((all, { amps, angle }) => all + amps * f(angle), 0)
    return Math.atan2(sum(Math.sin), sum(Math.cos))
  }
  return Math.sign(Math.sin(angleOf(0.1) - angleOf(0)))
}

describe('the order of three phases', () => {
  // Even permutations of U V W clockwise, odd ones the other way: instructions for industrial low-voltage motors citing IEC 60034-8
  // (L1 L2 L3 on U V W clockwise, on V U W counter-clockwise); a text on control engineering: only two sequences exist.
  it.each([
    ['U V W', 'same'],
    ['V W U', 'shifted'],
    ['W U V', 'shifted'],
    ['V U W', 'exchanged'],
    ['U W V', 'exchanged'],
    ['W V U', 'exchanged'],
  ])('on %s is %s, as the field of three windings turns', (ends, order) => {
    const list = ends.split(' ')
    expect(phaseOrder(supply, motor, land(list))).toBe(order)
    expect(fieldTurns(list)).toBe(order === 'exchanged' ? -1 : 1)
  })

  const orders = fc.shuffledSubarray(motor, { minLength: 3 })
  const sequence = (ends: readonly string[]) => phaseOrder(supply, motor, land(ends)) === 'exchanged'

  it('does not depend on the marks, on the order of the pairs or on where a list begins', () => {
    fc.assert(
      fc.property(
        orders,
        fc.shuffledSubarray([0, 1, 2], { minLength: 3 }),
        fc.nat(2),
        (ends, shuffled, by) => {
          const pairs = land(ends)
          const moved = shuffled.flatMap((i) => pairs.slice(i, i + 1))
          const order = phaseOrder(supply, motor, pairs)
          expect(phaseOrder(supply, motor, moved)).toBe(order)
          const turn = <T>(list: readonly T[]) => [...list.slice(by), ...list.slice(0, by)]
          expect(phaseOrder(turn(supply), motor, pairs) === 'exchanged').toBe(order === 'exchanged')
          // From the motor to the supply it is the same sequence.
          const back = pairs.map(([from, to]) => [to, from] as const)
          expect(phaseOrder(motor, supply, back) === 'exchanged').toBe(order === 'exchanged')
          expect(sequence([...ends].reverse())).toBe(!sequence(ends))
        },
      ),
    )
  })

  it('is the other sequence after an exchange, and in order where two were exchanged', () => {
    fc.assert(
      fc.property(orders, (ends) => {
        const pairs = land(ends)
        const [one, other] = pairsToExchange(supply, motor, pairs) ?? []
        const mended = pairs.map(([from, to]): PhasePair => {
          if (to === one?.[1]) return [from, other?.[1] ?? '']
          return to === other?.[1] ? [from, one?.[1] ?? ''] : [from, to]
        })
        const before = phaseOrder(supply, motor, pairs)
        expect(phaseOrder(supply, motor, mended)).toBe(before === 'exchanged' ? 'same' : 'exchanged')
      }),
    )
  })

  it('is none unless three marks are joined one to one', () => {
    expect(phaseOrder(supply, motor, land(['U', 'V', 'V']))).toBeUndefined()
    expect(phaseOrder(supply, motor, land(['U', 'V']))).toBeUndefined()
    expect(phaseOrder(supply, motor, land(['U', 'V', 'X']))).toBeUndefined()
    expect(phaseOrder(supply, motor, [])).toBeUndefined()
    expect(
      phaseOrder(['A', 'A', 'B'], motor, [
        ['A', 'U'],
        ['A', 'V'],
        ['B', 'W'],
      ]),
    ).toBeUndefined()
    expect(phaseOrder([...supply, 'L4'], motor, land(motor))).toBeUndefined()
    expect(pairsToExchange(supply, motor, [])).toBeUndefined()
  })
})

describe('the marks of a motor', () => {
  it.each([
    [['U', 'V', 'W'], 'clockwise'],
    [['V', 'W', 'U'], 'clockwise'],
    [['U1', 'W1', 'V1'], 'counter-clockwise'],
    [['1U1-1', '1V1-1', '1W1-1'], 'clockwise'],
    [['u', 'v', 'w'], 'clockwise'],
    [['U1', 'V2', 'W1'], undefined],
    [['A', 'B', 'C'], undefined],
    [['U', 'V', 'V'], undefined],
    [['U', 'V'], undefined],
    [[], undefined],
  ])('%j say %s', (marks, rotation) => {
    expect(standardRotation(marks)).toBe(rotation)
  })
})

describe('from the motor to the propeller', () => {
  const ways = fc.constantFrom('clockwise' as const, 'counter-clockwise' as const)

  it('a motor that turns clockwise facing its drive end drives a right-hand propeller ahead without a gear', () => {
    expect(shaftRotation({ motor: 'clockwise', driveEnd: 'aft' })).toBe(aheadRotation('right-hand'))
    expect(shaftRotation({ motor: 'clockwise', driveEnd: 'aft', gear: 'opposite' })).toBe(
      aheadRotation('left-hand'),
    )
    expect(shaftRotation({ motor: 'clockwise', driveEnd: 'aft', gear: 'same' })).toBe('clockwise')
  })

  it('each exchange, setting, gear and end turns it the other way, and two of them back', () => {
    fc.assert(
      fc.property(ways, fc.boolean(), fc.boolean(), (stated, isExchanged, isReversed) => {
        const turns = motorRotation({ stated, isExchanged, isReversed })
        expect(motorRotation({ stated, isExchanged: !isExchanged, isReversed: !isReversed })).toBe(turns)
        expect(motorRotation({ stated, isExchanged: !isExchanged, isReversed })).toBe(otherWay(turns))
        expect(motorRotation({ stated: otherWay(stated), isExchanged, isReversed })).toBe(otherWay(turns))
        const shaft = shaftRotation({ motor: turns, driveEnd: 'aft', gear: 'same' })
        expect(shaftRotation({ motor: turns, driveEnd: 'forward', gear: 'opposite' })).toBe(shaft)
        expect(shaftRotation({ motor: turns, driveEnd: 'forward' })).toBe(otherWay(shaft))
      }),
    )
  })

  it('outward screws are right-hand to starboard; the mirrored boat has the other hands', () => {
    expect(screwHand('outward', 'starboard')).toBe('right-hand')
    expect(screwHand('outward', 'port')).toBe('left-hand')
    expect(screwHand('inward', 'starboard')).toBe('left-hand')
    expect(screwHand('inward', 'port')).toBe('right-hand')
  })
})
