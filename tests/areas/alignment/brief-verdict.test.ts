// A reading in a few words. ISO 14253-1: outside only where value less U is above the limit, within only where value plus U is not.
import { expect, it } from 'vitest'
import { briefVerdict } from '../../../server/src/areas/alignment/plans/brief-words.ts'
import { correctionOf } from '../../../server/src/areas/alignment/plans/correction.ts'
import { blockIn } from '../job-text.ts'

const verdictOf = (gaps: string, offsets: string) => {
  const { block, lookup } = blockIn(
    `drive d {
  coupling { flange-diameter: 100 mm  gap-variation: max 0.10 mm [maker]  offset: max 0.15 mm [maker] }
  reading one {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: ${gaps}
    ${offsets}
  }
}
`,
    'd.one',
  )
  const outcome = correctionOf(block, lookup)
  return outcome.ok ? briefVerdict(outcome.value, 'metric') : outcome.fault.words
}

const parallel = 'top 1 mm, starboard 1 mm, bottom 1 mm, port 1 mm'

it.each([
  ['top 1.26 mm, starboard 1.13 mm, bottom 1.00 mm, port 1.13 mm', '', 'outside: 0.26, limit 0.10 mm'],
  [parallel, 'offsets: top 0 mm, starboard 0 mm, bottom 0 mm, port 0 mm', 'within: 0.00, limit 0.10 mm'],
  // The axis is half the difference of opposite places away: common practice, no source.
  [
    parallel,
    'offsets: top 0.5 mm, starboard 0 mm, bottom -0.5 mm, port 0 mm',
    'outside: offset 0.50, limit 0.15 mm',
  ],
  [parallel, '', 'undecided: offset not read'],
  ['top 2 mm, starboard 1 mm, bottom 1 mm, port 1 mm', '', 'readings disagree: read again'],
])('a reading in a few words: %s %s', (gaps, offsets, expected) => {
  expect(verdictOf(gaps, offsets)).toBe(expected)
})
