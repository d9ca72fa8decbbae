// A stated limit far above the usual one: 0.001 of the diameter (common practice) and the general industry table by speed; three times, no source.
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf } from '../../checks/marks.ts'

const found = (coupling: string, more = '') =>
  findingsOf(`drive main {\n  coupling { ${coupling} }\n${more}}\n`, allChecks)
    .findings.filter(({ check }) => check === 'alignment/limit-above-usual')
    .map(({ severity, message }) => `${severity}: ${message}`)

const flange = 'flange-diameter: 125 mm  gauge-diameter: 110 mm'
const at1500 = '  motor { power: 15 kW  speed: 1500 rpm }\n'

describe('a stated limit', () => {
  it.each([
    // 0.001 · 110 mm = 0.11 mm; 3 · 0.11 mm = 0.33 mm
    [`${flange}  gap-variation: max 0.33 mm`, '', []],
    [
      `${flange}  gap-variation: max 0.34 mm`,
      '',
      ['warning: The limit for gap variation, 0.34 mm, is 3.1 times the usual one.'],
    ],
    [
      `${flange}  gap-variation: max 5 mm [maker]`,
      '',
      ['information: The limit for gap variation, 5.00 mm, is 45 times the usual one.'],
    ],
    [
      `${flange}  gap-variation: max 0.10 mm  offset: max 1.5 mm`,
      '',
      ['warning: The limit for offset, 1.50 mm, is 14 times the usual one.'],
    ],
    // At 1500 rpm 0.09 mm, and 0.07 mm on 100 mm.
    [
      `kind: flexible  ${flange}  gap-variation: max 0.30 mm  offset: max 0.3 mm`,
      at1500,
      [
        'warning: The limit for gap variation, 0.30 mm, is 3.9 times the usual one.',
        'warning: The limit for offset, 0.30 mm, is 3.3 times the usual one.',
      ],
    ],
    ['gap-variation: max 5 mm', '', []],
    [`${flange}  gap-variation: max ? mm`, '', []],
    ['flange-diameter: ? mm  gap-variation: max 5 mm', '', []],
    [flange, '', []],
  ])('is held against the usual one: %s', (coupling, more, words) => {
    expect(found(coupling, more)).toEqual(words)
  })

  it('is said in the units of the job, and changes no verdict', () => {
    const drive = `drive main {
  coupling { flange-diameter: 5 in  gap-variation: max 0.1 in  offset: max 0.004 in }
  reading a { taken: 2026-03-04  gauge: 0.001 in  gaps: top 0.080 in, starboard 0.075 in, bottom 0.070 in, port 0.075 in }
}
`
    const { findings } = findingsOf(drive, allChecks)
    const messages = findings.map(({ message }) => message)
    expect(messages).toContain('The limit for gap variation, 0.1000 in, is 20 times the usual one.')
    expect(findings.map(({ check }) => check)).not.toContain('alignment/gap-variation-outside')
  })
})
