// The rating of the element is for service (docs/reference.md, max-offset): an earlier stand bends nothing.
import { expect, it } from 'vitest'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf } from '../../checks/marks.ts'

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

it('is reported at the reading that counts, with what it depends on', () => {
  const [found, ...more] = beyond(drive(reading('dry-1', '2026-03-04', 0.6)))
  expect(more).toEqual([])
  expect(found?.message).toContain('the coupling allows 0.50 mm')
  expect(found?.assumptions?.join()).toContain('gauge-diameter')
})

it('is not told of a reading that a later one follows', () => {
  expect(beyond(drive(reading('dry-1', '2026-03-04', 0.6), reading('dry-2', '2026-03-05', 0.02)))).toEqual([])
})

// Common practice, no source: one fault is reported once, with one way out of it.
it('is one finding where both ratings are exceeded, and sends to the plan', () => {
  const both = drive(reading('dry-1', '2026-03-04', 0.6))
    .replace('max-offset: 0.5 mm', 'max-offset: 0.5 mm  max-angle: 1 mrad')
    .replace(
      'gaps: top 1.80 mm, starboard 1.80 mm, bottom 1.80 mm',
      'gaps: top 1.90 mm, starboard 1.80 mm, bottom 1.70 mm',
    )
  const [found, ...more] = beyond(both)
  expect(more).toEqual([])
  expect(found?.message).toContain('0.60 mm from the shaft axis; the coupling allows 0.50 mm')
  expect(found?.detail).toContain('2.00 mrad to each other; the coupling allows 1.00 mrad')
  expect(found?.related).toHaveLength(2)
  expect(found?.todo).toMatch(/^Do not run the drive\. Follow the plan/)
})

// A shaft end that hangs is lifted when the coupling is joined (US Army TM 55-1905-222-14): what bends the element is the distance from the target.
it('counts from where the machine is to stand', () => {
  const hanging = (offset: number) =>
    drive(reading('dry-1', '2026-03-04', offset)).replace(
      '  reading',
      '  target { shaft-droop: 0.6 mm }\n  reading',
    )
  expect(beyond(hanging(0.6))).toEqual([])
  expect(beyond(hanging(0))[0]?.message).toContain('0.60 mm from its target')
})

// JCGM 100, 6: a reading proves what it shows less its expanded uncertainty. A gauge of 0.02 mm leaves more than 0.005 mm of an offset open, and more than
// 0.01 mrad of an angle read on 100 mm.
it.each([0.495, 0.505])(
  'is not told of an offset that the gauge cannot prove beyond 0.5 mm: %s mm',
  (offset) => {
    expect(beyond(drive(reading('dry-1', '2026-03-04', offset)))).toEqual([])
  },
)

it.each([
  [0.99, 0],
  [1.01, 0],
  [1.3, 1],
])('reports an angle only where the gauge proves it beyond 1 mrad: %s mrad', (angle, told) => {
  const half = angle / 20
  const text = drive(reading('dry-1', '2026-03-04', 0))
    .replace('max-offset: 0.5 mm', 'max-angle: 1 mrad')
    .replace(
      'gaps: top 1.80 mm, starboard 1.80 mm, bottom 1.80 mm',
      `gaps: top ${(1.8 + half).toFixed(4)} mm, starboard 1.80 mm, bottom ${(1.8 - half).toFixed(4)} mm`,
    )
  expect(beyond(text)).toHaveLength(told)
})
