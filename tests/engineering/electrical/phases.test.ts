import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  mapFaults,
  type PhasePair,
  permutationSense,
} from '../../../server/src/engineering/electrical/phases.ts'

const supply = ['L1', 'L2', 'L3']
const motor = ['U', 'V', 'W']
const land = (...ends: readonly string[]): readonly PhasePair[] =>
  ends.map((end, i) => [supply[i] ?? '', end])

describe('phase map', () => {
  it('is good when every terminal is joined once', () => {
    expect(mapFaults(supply, motor, land('V', 'W', 'U'))).toEqual([])
  })

  it('names a terminal joined twice, from its second use on, and the one left over', () => {
    expect(mapFaults(supply, motor, land('U', 'V', 'U'))).toEqual([
      { fault: 'doubled-to', terminal: 'U', index: 2 },
      { fault: 'missing-to', terminal: 'W' },
    ])
    expect(
      mapFaults(supply, motor, [
        ['L1', 'U'],
        ['L1', 'V'],
        ['L3', 'W'],
      ]),
    ).toEqual([
      { fault: 'doubled-from', terminal: 'L1', index: 1 },
      { fault: 'missing-from', terminal: 'L2' },
    ])
  })

  it('names a terminal that neither side has', () => {
    expect(mapFaults(supply, motor, [['L4', 'U'], ...land('U', 'V', 'X').slice(1)])).toEqual([
      { fault: 'unknown-from', terminal: 'L4', index: 0 },
      { fault: 'unknown-to', terminal: 'X', index: 2 },
      { fault: 'missing-from', terminal: 'L1' },
      { fault: 'missing-to', terminal: 'W' },
    ])
  })

  it('an empty map misses everything', () => {
    expect(mapFaults(supply, motor, []).map(({ terminal }) => terminal)).toEqual([...supply, ...motor])
  })

  it('has no fault exactly when it is a permutation', () => {
    const anyPair = fc.tuple(fc.constantFrom('L1', 'L2', 'L3', 'L4'), fc.constantFrom('U', 'V', 'W', 'X'))
    const good = fc.shuffledSubarray(motor, { minLength: 3 }).map((ends) => land(...ends))
    fc.assert(
      fc.property(fc.oneof(fc.array(anyPair, { maxLength: 4 }), good), (pairs) => {
        const sorted = (side: 0 | 1) => pairs.map((pair) => pair[side]).sort()
        const permutation = String(sorted(0)) === String(supply) && String(sorted(1)) === String(motor)
        expect(mapFaults(supply, motor, pairs).length === 0).toBe(permutation)
      }),
    )
  })
})

describe('rotation', () => {
  // IEC 60034-8, as an industrial motor maker's table of 2022 cites it: L1-L2-L3 on U-V-W turns clockwise
  // facing the drive end, on V-U-W counter-clockwise. Only two sequences exist (control-engineering textbook;
  // phase-rotation article).
  it.each([
    ['U', 'V', 'W', 'clockwise'],
    ['V', 'W', 'U', 'clockwise'],
    ['W', 'U', 'V', 'clockwise'],
    ['V', 'U', 'W', 'counter-clockwise'],
    ['U', 'W', 'V', 'counter-clockwise'],
    ['W', 'V', 'U', 'counter-clockwise'],
  ])('L1-L2-L3 on %s-%s-%s turns %s (IEC 60034-8)', (a, b, c, sense) => {
    expect(permutationSense(supply, motor, land(a, b, c))).toBe(sense)
  })

  it('swapping any two leads reverses it, and the order in which pairs are written does not matter', () => {
    const map = fc.shuffledSubarray(motor, { minLength: 3 })
    fc.assert(
      fc.property(
        map,
        fc.integer({ min: 0, max: 2 }),
        fc.shuffledSubarray([0, 1, 2], { minLength: 3 }),
        (ends, kept, order) => {
          const sense = permutationSense(supply, motor, land(...ends))
          const [i, j] = [0, 1, 2].filter((k) => k !== kept)
          const swapped = ends.map((end, k) => (k === i ? ends[j ?? 0] : k === j ? ends[i ?? 0] : end) ?? '')
          expect(permutationSense(supply, motor, land(...swapped))).not.toBe(sense)
          const pairs = land(...ends)
          expect(
            permutationSense(
              supply,
              motor,
              order.flatMap((k) => (pairs[k] ? [pairs[k]] : [])),
            ),
          ).toBe(sense)
        },
      ),
    )
  })

  it.each([
    ['a faulty map', supply, motor, land('U', 'U', 'W')],
    ['an incomplete map', supply, motor, land('U', 'V')],
    ['four terminals', [...supply, 'N'], [...motor, 'N'], [...land('U', 'V', 'W'), ['N', 'N'] as const]],
    ['a terminal listed twice', ['L1', 'L1', 'L3'], motor, land('U', 'V', 'W')],
  ])('%s has none', (_, from, to, pairs) => {
    expect(() => permutationSense(from, to, pairs)).toThrow(RangeError)
  })
})
