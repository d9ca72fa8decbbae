// A machine whose offset was not read is not pushed off its centre to bring the slope inside; that it could be is said. Similar triangles.
import { expect, it } from 'vitest'
import { correctionOf } from '../../../server/src/areas/alignment/plans/correction.ts'
import { planJson } from '../../../server/src/areas/alignment/plans/plan-json.ts'
import { correctionText } from '../../../server/src/areas/alignment/plans/words.ts'
import { blockIn } from '../job-text.ts'

const job = (offsets = '') => `drive main {
  coupling { kind: flexible  pilot: no  flange-diameter: 311 mm  gauge-diameter: 239 mm  gap-variation: max 0.06 mm  offset: max 0.15 mm }
  bed {
    adjuster: stud-and-nuts
    thread: "M12x1.25"
    nut-step: whole-flat
    foot aft { from-coupling: 344 mm  across: 0 mm port  travel-up: 2.76 mm  travel-down: 4.82 mm }
    foot fwd-port { from-coupling: 1197 mm  across: 230 mm port  travel-up: 3.30 mm  travel-down: 3.31 mm }
    foot fwd-stbd { from-coupling: 1197 mm  across: 230 mm starboard  travel-up: 1.00 mm  travel-down: 3.89 mm }
  }
  reading a {
    taken: 2026-03-04
    gauge: 0.005 mm
    gaps: top 2.665 mm, starboard 2.575 mm, bottom 2.205 mm, port 2.295 mm
    ${offsets}
  }
}
`
const planned = (text: string) => {
  const { block, lookup } = blockIn(text, 'main.a')
  const outcome = correctionOf(block, lookup)
  if (!outcome.ok) throw new Error(outcome.fault.words)
  return outcome.value
}

it('says that the slope alone could be met, and how far the flange would go', () => {
  // 0.46 mm on 239 mm over the 853 mm between the feet is 1.64 mm. With 1 mm of it at the forward feet the aft foot goes down 0.64 mm, and the flange
  // by 1 mm less 1.92 mrad x 1197 mm: 1.3 mm down, so within twice that.
  const c = planned(job())
  const words = correctionText(c, 'metric')
  expect(words).toContain(
    'No steps that the adjusters can make bring the slope within its limit and leave the machine flange where it stands (its offset was not read)',
  )
  expect(words).not.toContain('bring the machine within its limits;')
  const offCentre =
    planJson(c)
      .ways.flat()
      .find(({ type }) => type === 'off-centre')?.offCentre_mm ?? 0
  expect(offCentre).toBeGreaterThan(1.2)
  expect(offCentre).toBeLessThan(2.6)
})

it('and not where the offset was read', () => {
  const words = correctionText(
    planned(job('offsets: top 0 mm, starboard 0 mm, bottom 0 mm, port 0 mm')),
    'metric',
  )
  expect(words).toContain('bring the machine within its limits; these bring it nearest to them')
  expect(words).not.toContain('reading the rims')
})
