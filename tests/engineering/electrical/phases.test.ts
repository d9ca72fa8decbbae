import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { mapFaults, type PhasePair } from '../../../server/src/engineering/electrical/phases.ts'

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
