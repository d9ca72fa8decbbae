// What is said about the places that were read, and the circle they lie on. Geometry: three points always lie in one plane; top + bottom = port +
// starboard only holds of opposite places.
import { describe, expect, it } from 'vitest'
import { correctionOf } from '../../../server/src/areas/alignment/plans/correction.ts'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf } from '../../checks/marks.ts'
import { blockIn } from '../job-text.ts'

const job = (read: string, coupling = '') => `drive main {
  coupling { flange-diameter: 125 mm  ${coupling}  gap-variation: max 0.10 mm  offset: max 0.15 mm }
  reading a {
    taken: 2026-03-04
    gauge: 0.02 mm
    ${read}
  }
}
`
const assumed = (text: string): readonly string[] => {
  const { block, lookup } = blockIn(text, 'main.a')
  const outcome = correctionOf(block, lookup)
  if (!outcome.ok) throw new Error(outcome.fault.words)
  return outcome.value.assumptions
}
const four = 'top 1.80 mm, starboard 1.80 mm, bottom 1.80 mm, port 1.80 mm'
const three = '0 deg 1.80 mm, 120 deg 1.80 mm, 240 deg 1.80 mm'
const level = 'top 0 mm, starboard 0 mm, bottom 0 mm, port 0 mm'

describe('three places', () => {
  const words = (what: string) =>
    `none of the ${what} was misread: three places were read, and only a fourth could show it`

  it('cannot show a misreading, and the plan says so', () => {
    expect(assumed(job(`gaps: ${three}`))).toContain(words('gaps'))
    const rims = assumed(job(`gaps: ${four}\n    offsets: 0 deg 0 mm, 120 deg 0 mm, 240 deg 0 mm`))
    expect(rims).toContain(words('offsets'))
    expect(rims).not.toContain(words('gaps'))
  })

  it('is not said of four', () => {
    expect(assumed(job(`gaps: ${four}\n    offsets: ${level}`)).join()).not.toContain('misread')
  })
})

describe('the circle that is assumed', () => {
  const unsaid = ': the coupling does not say its gauge-diameter'
  it.each([
    ['gaps', `gaps: ${four}`, 'the gaps were read at the rim of the flange, on 125 mm (4.921 in)'],
    [
      'a face dial',
      `face-dial: ${level}`,
      'the face dial stood at the rim of the flange, on 125 mm (4.921 in)',
    ],
    [
      'two rim dials',
      `rim-dial: ${level}\n    rim-dial-at: 20 mm\n    reverse-dial: ${level}\n    reverse-dial-at: -100 mm`,
      'the gap variation is worked out on the diameter of the flange, 125 mm (4.921 in)',
    ],
  ])('of %s', (_, read, words) => {
    const said = assumed(job(read)).filter((line) => line.includes(unsaid))
    expect(said).toEqual([`${words}${unsaid}`])
    expect(assumed(job(read, 'gauge-diameter: 110 mm')).join()).not.toContain(unsaid)
  })
})

describe('readings that do not close', () => {
  const open = (read: string) =>
    findingsOf(job(read), allChecks).findings.find(({ check }) => check === 'alignment/readings-do-not-close')

  it('are told by the sums of opposite pairs where there are such', () => {
    // 1.92 + 1.92 - 1.60 - 1.60 = 0.64; two gauge steps.
    const found = open('gaps: top 1.92 mm, starboard 1.60 mm, bottom 1.92 mm, port 1.60 mm')
    expect(found?.message).toContain(
      'The gaps do not close: sums of opposite pairs differ by 0.64 mm; the gauge explains 0.04 mm.',
    )
    const skew = open('gaps: 10 deg 1.92 mm, 60 deg 1.60 mm, 190 deg 1.92 mm, 240 deg 1.60 mm')
    expect(skew?.message).toContain('sums of opposite pairs differ by 0.64 mm')
  })

  it('are not where there are none', () => {
    const found = open(
      'gaps: 0 deg 1.92 mm, 72 deg 1.60 mm, 144 deg 1.92 mm, 216 deg 1.60 mm, 288 deg 1.80 mm',
    )
    expect(found?.message).not.toContain('opposite')
    expect(found?.message).toMatch(
      /^The gaps do not close: they are off by \d\.\d\d mm; the gauge explains \d\.\d\d mm\.$/,
    )
  })
})
