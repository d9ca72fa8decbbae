// Port and starboard are alike: a machine in a mirror has the slides of the machine, to the other side (symmetry).
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { type Slide, slidesOf } from '../../server/src/engineering/alignment/slides.ts'

const mm = 1e-3
const mrad = 1e-3
/** Sorted, so that only which slides there are counts. */
const said = (slides: readonly Slide[], side: 1 | -1) =>
  slides
    .map(({ moves, left }) =>
      [...moves, left.offset, left.slope].map((value) => Math.round(side * value * 1e8) + 0).join(' '),
    )
    .sort()

it('a machine in a mirror slides as the machine does, to the other side', () => {
  const length = fc.double({ min: -2, max: 2, noNaN: true })
  fc.assert(
    fc.property(
      length,
      fc.oneof(length, fc.constantFrom(-1, 1, -3, 3, 20)),
      fc.array(fc.integer({ min: 1, max: 20 }), { minLength: 3, maxLength: 3 }),
      (offset, slope, holes) => {
        const feet = holes.map((hole, i) => ({ x: 0.2 + 0.15 * i, sideways: hole * 0.1 * mm }))
        const slides = (side: 1 | -1) =>
          slidesOf(feet, { offset: side * offset * mm, slope: side * slope * mrad }, mrad)
        expect(said(slides(-1), -1)).toEqual(said(slides(1), 1))
        expect(slides(1).length).toBeLessThanOrEqual(245)
      },
    ),
  )
})
