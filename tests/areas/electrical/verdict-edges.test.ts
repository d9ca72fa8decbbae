// Where a finding begins and ends: the ends of a range, the other kind of machine, the size that no table holds.
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf, placed } from '../../checks/marks.ts'

const found = (text: string, check: string) =>
  findingsOf(text, allChecks).findings.filter((finding) => finding.check === check)

describe('the nominal voltage of a battery', () => {
  // The window is where the voltage is from empty to full charge, both included: common practice, no source.
  it.each([
    ['42 V', 0],
    ['54 V', 0],
    ['41.9 V', 1],
    ['54.1 V', 1],
  ])('%s against a window of 42 V to 54 V', (nominal, count) => {
    const text = `battery b { nominal: ${nominal}  window: 42..54 V }\n`
    expect(found(text, 'battery/nominal-outside-window')).toHaveLength(count)
  })
})

describe('what a cable joins', () => {
  const drive = (cable: string, terminals = '') => `battery b { nominal: 48 V  window: 42..54 V }
drive main {
  motor m { power: 5 kW  ${terminals} }
  controller c { }
  cable f { ${cable}  conductor: 35 mm2  length: 2 m  insulation: 105 degC }
}
`
  it('may carry three phases between controller and motor', () => {
    expect(found(drive('from: c  to: m  system: three-phase'), 'cable/battery-not-dc')).toEqual([])
    expect(found(drive('from: b  to: m  system: three-phase'), 'cable/battery-not-dc')).toHaveLength(1)
  })

  // A DC motor has two terminals, a three-phase motor three (common practice, no source); which it is, the cable says where no terminals are listed.
  it.each([
    ['', 'system: dc', 0],
    ['terminals: A1, A2', 'system: dc', 0],
    ['terminals: U, V, W', 'system: dc', 1],
    ['', '', 1],
  ])('is a battery and a motor: terminals %j, %j', (terminals, system, count) => {
    expect(found(drive(`from: b  to: m  ${system}`, terminals), 'cable/battery-to-motor')).toHaveLength(count)
  })

  it.each([
    ['from: b  to: m', 'm'],
    ['from: m  to: b', 'm'],
  ])('is marked at the motor: %s', (ends, word) => {
    const text = drive(ends)
    const [finding] = placed(findingsOf(text, allChecks)).filter(
      ({ check }) => check === 'cable/battery-to-motor',
    )
    const line = text.split('\n')[finding?.line ?? 0] ?? ''
    expect(line.slice(finding?.from, finding?.to)).toBe(word)
  })
})

describe('a cable too thin for its current', () => {
  const drive = (conductor: string) => `drive main {
  controller c { }
  battery b { nominal: 48 V  window: 42..54 V }
  cable f { from: b  to: c  conductor: ${conductor}  length: 1 m  insulation: 105 degC  design-current: 900 A  place: open  bundled: 1 }
}
`
  // 35 mm² lies in 33 CFR 183.425 Table 5 and ISO 13297; 240 mm² is larger than every row, and carries at least the figure of the largest.
  it.each([
    ['35 mm2', true],
    ['240 mm2', false],
  ])('%s', (conductor, isMost) => {
    const [finding] = found(drive(conductor), 'cable/undersized')
    expect(finding?.limit?.startsWith('at most')).toBe(isMost)
  })
})

describe('a fuse away from the battery', () => {
  // 33 CFR 183.455(b): 7 in (177.8 mm), 40 in (1016 mm) inside a sheath.
  const drive = (distance: string) => `battery b { nominal: 48 V  window: 42..54 V }
drive main {
  controller c { }
  cable f { from: b  to: c  conductor: 35 mm2  length: 2 m  insulation: 105 degC }
  protection p { rating: 100 A  in: f  at: ${distance} }
}
`
  it.each([
    ['177 mm', undefined, ''],
    ['7 in', undefined, ''],
    ['300 mm', 'information', 'at most 177.8 mm'],
    ['40 in', 'information', '7 in'],
    ['1.02 m', 'error', 'at most 1.016 m'],
  ])('by %s', (distance, severity, limit) => {
    const [finding] = found(drive(distance), 'protection/far-from-source')
    expect(finding?.severity).toBe(severity)
    if (severity) expect(finding?.limit).toContain(limit)
  })
})
