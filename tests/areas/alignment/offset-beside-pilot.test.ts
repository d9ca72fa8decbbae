// Common practice, no source: a pilot that is engaged leaves no offset to read, by whatever it is read.
import { expect, it } from 'vitest'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf, placed } from '../../checks/marks.ts'

const text = (rims: string, pilot = 'yes') => `drive main {
  coupling { flange-diameter: 100 mm  pilot: ${pilot}  gap-variation: max 0.10 mm [maker] }
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.80 mm, starboard 1.80 mm, bottom 1.80 mm, port 1.80 mm
    ${rims}
  }
}
`
const lines = (job: string) =>
  placed(findingsOf(job, allChecks)).flatMap(({ check, line }) =>
    check === 'alignment/offset-beside-pilot' ? [line] : [],
  )

it.each([
  'offsets: top 0.02 mm, starboard 0 mm, bottom -0.02 mm, port 0 mm',
  'rim-dial: top 0.04 mm, starboard 0 mm, bottom 0 mm, port 0.04 mm',
])('an offset is told where it was read: %s', (rims) => {
  expect(lines(text(rims))).toEqual([6])
  expect(lines(text(rims, 'no'))).toEqual([])
})

it('none is told where none was read', () => {
  expect(lines(text('by: "fitter 2"'))).toEqual([])
})
