// The current that fuses let through, against the definition of the smallest cut: max-flow min-cut theorem (Ford and Fulkerson 1956).
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  type CircuitLink,
  circuitOf,
  letThrough as letThroughIn,
} from '../../../server/src/engineering/electrical/let-through.ts'

const letThrough = (links: readonly CircuitLink[], from: readonly string[], to: string) =>
  letThroughIn(circuitOf(links, from), to)
const wire = (from: string, to: string): CircuitLink => ({ ends: [from, to] })
const fuse = (from: string, to: string, rating: number): CircuitLink => ({ ends: [from, to], rating })

describe('a fuse lets its rating through', () => {
  it.each<[string, readonly CircuitLink[], number, readonly number[]]>([
    ['a conductor alone: without end', [wire('bank', 'feed')], Number.POSITIVE_INFINITY, []],
    ['none at all: nothing', [], 0, []],
    ['one fuse', [fuse('bank', 'bus', 250), wire('bus', 'feed')], 250, [0]],
    ['two in a row: the smaller', [fuse('bank', 'bus', 250), fuse('bus', 'feed', 63)], 63, [1]],
    ['two side by side: both', [fuse('bank', 'feed', 250), fuse('bank', 'feed', 63)], 313, [0, 1]],
    [
      'a way round a fuse: without end',
      [fuse('bank', 'feed', 63), wire('bank', 'feed')],
      Number.POSITIVE_INFINITY,
      [],
    ],
    ['one that is not known, taken as 0: nothing', [fuse('bank', 'feed', 0)], 0, [0]],
    [
      'two banks with a fuse each on one bus, a fuse behind it',
      [fuse('bank', 'bus', 250), fuse('spare', 'bus', 250), fuse('bus', 'feed', 400)],
      400,
      [2],
    ],
  ])('%s', (_, links, amps, limitedBy) => {
    expect(letThrough(links, ['bank', 'spare'], 'feed')).toEqual({ amps, limitedBy })
  })

  it('at a source: without end', () => {
    expect(letThrough([], ['bank'], 'bank').amps).toBe(Number.POSITIVE_INFINITY)
  })

  it('and none below zero', () => {
    expect(() => letThrough([fuse('bank', 'feed', -1)], ['bank'], 'feed')).toThrow('must not be below zero')
    expect(() => letThrough([fuse('bank', 'feed', Number.NaN)], ['bank'], 'feed')).toThrow(
      'must not be below zero',
    )
  })
})

const places = ['bank', 'spare', 'a', 'b', 'c', 'feed'] as const
const anyLink = fc
  .record({
    from: fc.constantFrom(...places),
    to: fc.constantFrom(...places),
    rating: fc.option(fc.integer({ min: 0, max: 400 }), { nil: undefined, freq: 4 }),
  })
  .map(({ from, to, rating }): CircuitLink => ({ ends: [from, to], ...(rating !== undefined && { rating }) }))
const anyCircuit = fc.array(anyLink, { maxLength: 14 })
const sources = ['bank', 'spare']

/** The smallest sum of ratings between any set of places with the sources and the rest with the feed. */
function smallestCut(links: readonly CircuitLink[]): number {
  let least = Number.POSITIVE_INFINITY
  for (let set = 0; set < 8; set++) {
    const inside = new Set<string>([...sources, ...['a', 'b', 'c'].filter((_, i) => set & (1 << i))])
    const cut = links.filter(({ ends: [from, to] }) => inside.has(from) !== inside.has(to))
    least = Math.min(
      least,
      cut.reduce((sum, { rating = Number.POSITIVE_INFINITY }) => sum + rating, 0),
    )
  }
  return least
}

describe('in any circuit', () => {
  it('it is the smallest cut, and the devices named are one', () => {
    fc.assert(
      fc.property(anyCircuit, (links) => {
        const { amps, limitedBy } = letThrough(links, sources, 'feed')
        expect(amps).toBe(smallestCut(links))
        if (!Number.isFinite(amps)) return
        expect(limitedBy.reduce((sum, i) => sum + (links[i]?.rating ?? 0), 0)).toBe(amps)
        const parted = links.filter((_, i) => !limitedBy.includes(i))
        expect(letThrough(parted, sources, 'feed').amps).toBe(0)
      }),
      { numRuns: 2000 },
    )
  })

  it('a larger fuse or another conductor never protects more', () => {
    fc.assert(
      fc.property(
        anyCircuit,
        anyLink,
        fc.nat(),
        fc.integer({ min: 0, max: 200 }),
        (links, link, which, more) => {
          const { amps } = letThrough(links, sources, 'feed')
          expect(letThrough([...links, link], sources, 'feed').amps).toBeGreaterThanOrEqual(amps)
          const larger = links.map((one, i) =>
            i === which % links.length && one.rating !== undefined
              ? { ...one, rating: one.rating + more }
              : one,
          )
          expect(letThrough(larger, sources, 'feed').amps).toBeGreaterThanOrEqual(amps)
        },
      ),
    )
  })

  it('a link left out is as one that is not there', () => {
    fc.assert(
      fc.property(anyCircuit, fc.nat(), (links, which) => {
        const out = which % Math.max(links.length, 1)
        const circuit = circuitOf(links, sources)
        const rest = links.filter((_, i) => i !== out)
        expect(letThroughIn(circuit, 'feed', new Set([out])).amps).toBe(
          letThrough(rest, sources, 'feed').amps,
        )
      }),
    )
  })

  it('the order of links and of their ends changes nothing', () => {
    fc.assert(
      fc.property(anyCircuit, (links) => {
        const turned = links
          .toReversed()
          .map(({ ends: [from, to], ...rest }): CircuitLink => ({ ...rest, ends: [to, from] }))
        expect(letThrough(turned, sources, 'feed').amps).toBe(letThrough(links, sources, 'feed').amps)
      }),
    )
  })
})
