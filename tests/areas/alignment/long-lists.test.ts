import { describe, expect, it } from 'vitest'
import { correctionOf } from '../../../server/src/areas/alignment/plans/correction.ts'
import { correctionText } from '../../../server/src/areas/alignment/plans/words.ts'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf } from '../../checks/marks.ts'
import { blockIn } from '../job-text.ts'

// Longer lists than any boat has are not read or not searched. That is said where they stand, and no verdict is milder for it.

const times = (count: number, of: (i: number) => string, between = ''): string =>
  Array.from({ length: count }, (_, i) => of(i)).join(between)

/** What a tilted flange shows at so many places. */
const placesOf = (count: number): string =>
  times(
    count,
    (i) => `${(360 * i) / count} deg ${(1.8 + 0.13 * Math.cos((2 * Math.PI * i) / count)).toFixed(2)} mm`,
    ', ',
  )

const job = ({ feet = 4, gaps = 4 }): string => `drive main {
  coupling { flange-diameter: 125 mm  gap-variation: max 0.10 mm  offset: max 0.15 mm }
  bed {
    adjuster: stud-and-nuts
    thread: M16
${times(feet, (i) => `    foot f${i} { from-coupling: ${180 + 20 * i} mm  across: 140 mm ${i % 2 ? 'port' : 'starboard'} }\n`)}  }
  reading dry {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: ${placesOf(gaps)}
    offsets: top 0.06 mm, starboard -0.02 mm, bottom -0.05 mm, port 0.03 mm
  }
}
`

const outcomeOf = (text: string) => {
  const { block, lookup } = blockIn(text, 'main.dry')
  return { outcome: correctionOf(block, lookup), lookup }
}
const found = (text: string) =>
  findingsOf(text, allChecks).findings.filter(({ severity }) => severity === 'error')
const checksOf = (text: string) => found(text).map(({ check }) => check)

describe('a bed with more feet than are searched', () => {
  it('keeps its verdict, gives no steps and says why', () => {
    const { outcome, lookup } = outcomeOf(job({ feet: 41 }))
    if (!outcome.ok) throw new Error(outcome.fault.words)
    expect(outcome.value.verdict).toBe('outside')
    expect(outcome.value.feet).toEqual([])
    expect(outcome.value.feetFault?.type).toBe('too-many-feet')
    expect(correctionText(outcome.value, lookup.system)).toContain(
      'The bed has 41 feet. Moves are worked out for at most 40.',
    )
    expect(checksOf(job({ feet: 41 }))).toContain('alignment/too-many-feet')
    expect(checksOf(job({ feet: 41 }))).toContain('alignment/gap-variation-outside')
  })

  it('gives steps at the limit', () => {
    const { outcome } = outcomeOf(job({ feet: 40 }))
    expect(outcome.ok && outcome.value.feet.length).toBe(40)
    expect(checksOf(job({ feet: 40 }))).not.toContain('alignment/too-many-feet')
  })
})

describe('a reading at more places than are read', () => {
  it('is no reading, which is an error', () => {
    const { outcome } = outcomeOf(job({ gaps: 101 }))
    expect(outcome.ok).toBe(false)
    expect(checksOf(job({ gaps: 101 }))).toEqual(['job/list-too-long'])
  })

  it('is read at so many as a plane is fitted to', () => {
    expect(outcomeOf(job({ gaps: 60 })).outcome.ok).toBe(true)
    expect(checksOf(job({ gaps: 60 }))).toContain('alignment/gap-variation-outside')
  })
})

it.each([
  ['terminals', (n: number) => `motor { terminals: ${times(n, (i) => `U${i}`, ', ')} }`],
  ['pairs', (n: number) => `drive main { phase-map { ${times(n, (i) => `A${i} to U${i}`, ', ')} } }`],
  ['lifts', (n: number) => `drive main { reading r { lifts: ${times(n, (i) => `f${i} 0.02 mm`, ', ')} } }`],
  ['clearances', (n: number) => `shaft-log { clearance: ${placesOf(n)} }`],
])('more than 100 %s are an error where they begin to be too many', (_, text) => {
  const [finding] = found(text(103)).filter(({ check }) => check === 'job/list-too-long')
  expect(finding?.message).toMatch(/^The list has 103 \w+; at most 100 can be read\.$/)
  expect(checksOf(text(100))).not.toContain('job/list-too-long')
})
