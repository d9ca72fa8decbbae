// The rating of the element is for service (docs/reference.md, max-offset): an earlier stand bends nothing.
import { expect, it } from 'vitest'
import { allChecks } from '../../server/src/checks/index.ts'
import { findingsOf } from './marks.ts'

const reading = (name: string, taken: string, offset: number) => `  reading ${name} {
    taken: ${taken}
    gauge: 0.02 mm
    gaps: top 1.80 mm, starboard 1.80 mm, bottom 1.80 mm, port 1.80 mm
    offsets: top ${offset} mm, starboard 0 mm, bottom ${-offset} mm, port 0 mm
  }
`
const drive = (...readings: readonly string[]) => `drive main {
  coupling { kind: flexible  flange-diameter: 100 mm  gap-variation: max 0.10 mm  offset: max 0.15 mm  max-offset: 0.5 mm }
${readings.join('')}}
`
const beyond = (text: string) =>
  findingsOf(text, allChecks).findings.filter(
    ({ check }) => check === 'alignment/misalignment-beyond-coupling',
  )

it('is told of the reading that counts, with what it hangs on', () => {
  const [found, ...more] = beyond(drive(reading('dry-1', '2026-03-04', 0.6)))
  expect(more).toEqual([])
  expect(found?.message).toContain('rated for 0.5 mm')
  expect(found?.assumptions?.join()).toContain('gauge-diameter')
})

it('is not told of a reading that a later one follows', () => {
  expect(beyond(drive(reading('dry-1', '2026-03-04', 0.6), reading('dry-2', '2026-03-05', 0.02)))).toEqual([])
})
