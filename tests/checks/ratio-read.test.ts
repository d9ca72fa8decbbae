// A gear ratio with a colon is understood, and what was understood is said. The language's own rule.
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../server/src/areas/index.ts'
import { formatText } from '../../server/src/syntax/format.ts'
import { factValue, read } from '../job/meaning.ts'
import { findingsOf } from './marks.ts'
import { fixed } from './offers.ts'

const gear = (ratio: string) => `gear stock {\n  ratio: ${ratio}\n  turns: same\n}\n`
const ratioOf = (ratio: string) => factValue(read(gear(ratio)).blocks, 'stock.ratio')
const found = (ratio: string) =>
  findingsOf(gear(ratio), allChecks).findings.map(({ check, severity, message }) => [
    severity,
    check,
    message,
  ])

describe('a gear ratio', () => {
  it.each([
    ['1:1', []],
    ['0.4:1', ['warning']],
    ['1:0.4', ['warning']],
  ])('%s is the same both ways, or is warned of', (written, severities) => {
    const found = findingsOf(`gear { ratio: ${written} }`, allChecks).findings
    expect(found.filter(({ check }) => check === 'job/ratio-read').map(({ severity }) => severity)).toEqual(
      severities,
    )
  })

  it.each([
    ['2.0:1', 2],
    ['1:2.0', 2],
    ['2.5:1', 2.5],
    ['1:2.5', 2.5],
    ['5:2', 2.5],
    ['1 : 2.5', 2.5],
  ])('%s is a reduction, and a finding says so', (written, turns) => {
    expect(ratioOf(written)).toBe(turns)
    expect(found(written)).toEqual([
      ['information', 'job/ratio-read', `Read as a reduction: ${turns} motor turns for each shaft turn.`],
    ])
    expect(fixed(gear(written), 'job/ratio-read', `Write ${turns}`)).toBe(gear(String(turns)))
  })

  it.each([
    ['2.5', 2.5],
    ['0.4', 0.4],
  ])('%s is what it says', (written, turns) => {
    expect(ratioOf(written)).toBe(turns)
    expect(found(written)).toEqual([])
  })

  it.each(['0:1', '1:0', '1:', '1:500', '-1:2', '1:2 mm', '1:2:3'])('%s is refused', (written) => {
    expect(ratioOf(written)).toBeUndefined()
    expect(found(written).some(([severity]) => severity === 'error')).toBe(true)
  })

  it('keeps its colon in the layout', () => {
    expect(formatText(gear('1:2.5'))).toBe(gear('1:2.5'))
    expect(formatText(gear('1 : 2.5'))).toBe(gear('1:2.5'))
  })

  it('ends before the next fact of its line', () => {
    const { blocks } = read('gear stock { ratio: 1:2 turns: same }\n')
    expect([factValue(blocks, 'stock.ratio'), factValue(blocks, 'stock.turns')]).toEqual([2, 'same'])
  })
})
