// Figures that stand against each other are rounded to the safe side: 108 V over 14 mohm is 7714.3 A (Ohm).
import { expect, it } from 'vitest'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf } from '../../checks/marks.ts'

const found = (interrupts: string) =>
  findingsOf(
    `battery house { nominal: 96 V  window: 84..108 V  internal-resistance: 14 mohm }
drive main {
  controller { }
  cable feed { from: house  to: controller  conductor: 95 mm2  length: 2.5 m  insulation: 105 degC }
  protection main-fuse { rating: 315 A  in: feed  interrupts: ${interrupts} }
}
`,
    allChecks,
  ).findings.filter(({ check }) => check === 'protection/interrupts-too-little')

it('a fuse that misses by a third of an ampere is not said to interrupt just as much', () => {
  const [finding] = found('7.714 kA')
  expect(finding?.message).toMatch(/interrupt 7714 A; .* 7715 A/)
  expect(finding?.limit).toBe('at least 7715 A')
  expect(found('7715 A')).toEqual([])
})
