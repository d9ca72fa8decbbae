// What a flexible element is rated for is never more than what is allowed (the rating of the maker): check and plan then say the same.
import { expect, it } from 'vitest'
import { correctionOf } from '../../../server/src/areas/alignment/plans/correction.ts'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf } from '../../checks/marks.ts'
import { blockIn } from '../job-text.ts'

const job = (coupling: string, gap = 2, off = 0.2, more = '') => `drive main {
  coupling { kind: flexible  flange-diameter: 100 mm  ${coupling} }
  ${more}
  reading a {
    taken: 2026-03-04
    gauge: 0.01 mm
    gaps: top ${gap} mm, starboard 2 mm, bottom ${4 - gap} mm, port 2 mm
    offsets: top ${off} mm, starboard 0 mm, bottom ${-off} mm, port 0 mm
  }
}
`
const planned = (text: string) => {
  const { block, lookup } = blockIn(text, 'main.a')
  const outcome = correctionOf(block, lookup)
  if (!outcome.ok) throw new Error(outcome.fault.words)
  return outcome.value
}
const found = (text: string) => findingsOf(text, allChecks).findings.map(({ check }) => check)

it('an offset beyond the rating is outside, whatever else is allowed', () => {
  const text = job('gap-variation: max 0.10 mm  offset: max 0.30 mm  max-offset: 0.1 mm')
  expect(planned(text)).toMatchObject({
    verdict: 'outside',
    offset: { limit: 1e-4, limitFrom: 'the rating of the coupling' },
  })
  expect(found(text)).toEqual(
    expect.arrayContaining(['alignment/misalignment-beyond-coupling', 'alignment/offset-outside']),
  )
  expect(planned(text.replace('max-offset: 0.1 mm', 'max-offset: 1 mm')).verdict).toBe('within')
})

it('an angle beyond the rating is too: 0.05 deg on 100 mm is 0.087 mm', () => {
  const text = job('gap-variation: max 0.30 mm  offset: max 0.30 mm  max-angle: 0.05 deg', 2.06, 0)
  const c = planned(text)
  expect(c.gapVariation.limit).toBeCloseTo(((0.05 * Math.PI) / 180) * 0.1, 9)
  expect(c.verdict).toBe('outside')
})

it('a gear that says no ratio is an assumption of the limits', () => {
  const said = (gear: string) =>
    planned(job('', 2, 0, `motor m { power: 10 kW  speed: 1500 rpm }\n  ${gear}`)).assumptions.join()
  expect(said('gear { turns: same }')).toContain('the gear does not state its ratio')
  expect(said('gear { ratio: 2 }')).not.toContain('ratio')
  expect(said('')).not.toContain('ratio')
})
