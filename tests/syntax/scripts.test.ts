// Line ends, marks and letters that an editor or a keyboard may put in.
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../server/src/areas/index.ts'
import { findUnit } from '../../server/src/quantity/units.ts'
import { parseSection } from '../../server/src/syntax/parser.ts'
import { findingsOf, placed } from '../checks/marks.ts'

const job = `drive main {
  seal {
    free-length: 148
  }
}
`
const found = (text: string) =>
  placed(findingsOf(text, allChecks))
    .filter(({ check }) => /^job\/(?!(?:job|block|fact)-missing)/.test(check))
    .map(({ check, line, from, to }) => ({ check, line, from, to }))
const expected = [{ check: 'job/unit-missing', line: 2, from: 17, to: 20 }]

describe('a text', () => {
  it.each([
    ['LF', job],
    ['CRLF', job.replaceAll('\n', '\r\n')],
    ['CR alone', job.replaceAll('\n', '\r')],
    ['a byte order mark', `\uFEFF${job}`],
    ['no newline at its end', job.trimEnd()],
    ['spaces at line ends', job.replaceAll('\n', ' \t\n')],
    ['no-break spaces', job.replace('free-length: ', 'free-length:\u00A0')],
  ])('with %s has its findings where they stand', (_what, text) => {
    expect(found(text)).toEqual(expected)
  })

  it('with tabs counts each as one character', () => {
    expect(found(job.replaceAll('  ', '\t'))).toEqual([
      { check: 'job/unit-missing', line: 2, from: 15, to: 18 },
    ])
  })

  it.each(['hækja', 'ось', '軸', 'άξονας', 'محور', '_a', 'é'])('may name a block %s', (name) => {
    const text = `drive ${name} {\n  gear { ratio: 2.5 }\n}\n`
    expect(found(text)).toEqual([])
    const [block] = parseSection(text).tree.items
    expect(block).toMatchObject({ type: 'block', heading: [{ type: 'word', text: name }] })
  })

  it('counts positions in UTF-16 units behind a sign outside the first plane, as LSP does', () => {
    expect(found('job "\u{1F6A2}" { vessel: 5 }')).toEqual([
      { check: 'job/value-not-allowed', line: 0, from: 19, to: 20 },
    ])
  })

  it.each([
    ['35 \u00b5m', '35 \u03bcm'], // micro sign, Greek mu
    ['14 m\u03a9', '14 m\u2126'], // Greek omega, ohm sign
    ['35 °', '35 deg'],
    ['45 N·m', '45 Nm'],
    ['35 mm²', '35 mm2'],
    ['90 °C', '90 degC'],
  ])('reads %s and %s alike', (one, other) => {
    const unit = (value: string) => {
      const [fact] = parseSection(`x: ${value}`).tree.items
      const part = fact?.type === 'fact' ? fact.entries[0]?.parts[0] : undefined
      return part?.type === 'amount' ? findUnit(part.unit?.text ?? '') : undefined
    }
    expect(unit(one)).toBeDefined()
    expect(unit(one)).toBe(unit(other))
  })
})
