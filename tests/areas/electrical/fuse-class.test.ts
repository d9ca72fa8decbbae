// What follows from the class of a fuse. IEC 60269-1, from memory: a is partial range, g full range.
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf } from '../../checks/marks.ts'

const job = (
  fuse: string,
  more = '',
) => `battery b { nominal: 96 V  window: 84..108 V  internal-resistance: 14 mohm }
drive main {
  controller { input: 72..120 V }
  cable feed { from: b  to: controller  conductor: 95 mm2  length: 2 m  insulation: 105 degC }
  protection f { kind: fuse  rating: 250 A  in: feed  at: 100 mm  ${fuse} }
  ${more}
}
`
const found = (text: string, check: string) =>
  findingsOf(text, allChecks).findings.filter((one) => one.check === check)
const second = (facts: string) => `protection g { rating: 300 A  in: feed  at: 200 mm  ${facts} }`

describe('a fuse of partial range', () => {
  it.each([
    ['fuse-class: aR', '', 1],
    ['fuse-class: aM', '', 1],
    ['fuse-class: gR', '', 0],
    ['fuse-class: T', '', 0],
    ['', '', 0],
    ['fuse-class: aR', second('kind: fuse  fuse-class: gG'), 0],
    ['fuse-class: aR', second('kind: circuit-breaker'), 0],
    // Nothing says that this one opens in an overload.
    ['fuse-class: aR', second('kind: fuse'), 1],
    ['fuse-class: aR', second('kind: fuse  fuse-class: aM'), 2],
  ])('%s, %j', (fuse, more, count) => {
    expect(found(job(fuse, more), 'protection/partial-range')).toHaveLength(count)
  })
})

describe('an interrupting capacity that is not stated', () => {
  it('does not follow from a class', () => {
    const [finding] = found(job('fuse-class: T'), 'protection/interrupts-unknown')
    expect(finding?.detail).toContain('usually made for 20 kA')
    const [other] = found(job('fuse-class: gG'), 'protection/interrupts-unknown')
    expect(other?.detail).not.toContain('20 kA')
  })
})
