import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { broken } from './laws.ts'
import { acceptances, offersOf } from './offers.ts'

const read = (path: string) => readFileSync(resolve(import.meta.dirname, '../../docs/examples', path), 'utf8')
const others = { 'parts/drivetrain.wright': read('parts/drivetrain.wright') }
const demos = ['inch-day-boat.wright', 'survey-launch-as-found.wright', 'twin-screw-ferry.wright'].map(read)

/** A demo with one character gone, or another put in its place. */
const damaged = fc
  .record({
    demo: fc.constantFrom(...demos),
    at: fc.double({ min: 0, max: 1, noNaN: true }),
    by: fc.constantFrom('', 'x', '7', ','),
  })
  .map(({ demo, at, by }) => {
    const i = Math.floor(at * (demo.length - 1))
    return demo.slice(0, i) + by + demo.slice(i + 1)
  })

it('every fix of a damaged job obeys the laws: its finding goes, none comes, and once is enough', () => {
  fc.assert(
    fc.property(damaged, (text) => {
      const before = offersOf(text, undefined, { others })
      for (const offered of before.offers)
        expect(broken(offered, before, { others, loose: true })).toEqual([])
    }),
    { numRuns: 40 },
  )
}, 60_000)

it('offers come for the beginning of any job, and change nothing outside it', () => {
  fc.assert(
    fc.property(fc.constantFrom(...demos), fc.double({ min: 0, max: 1, noNaN: true }), (demo, at) => {
      const text = demo.slice(0, Math.floor(at * demo.length))
      for (const options of [{ others }, { others, ...acceptances }])
        for (const { fix, document } of offersOf(text, undefined, options).offers)
          for (const {
            at: { section, span },
          } of fix.edits) {
            expect(document.sections).toContain(section)
            expect(span.start).toBeGreaterThanOrEqual(0)
            expect(span.end).toBeGreaterThanOrEqual(span.start)
            expect(span.end).toBeLessThanOrEqual(section.text.length)
          }
    }),
    { numRuns: 40 },
  )
}, 60_000)
