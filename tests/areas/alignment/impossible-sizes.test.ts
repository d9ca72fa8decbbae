// What sits on a shaft, or takes it in, cannot be smaller than it is (geometry). 35 h9 is 0 to -62 µm (ISO 286-2).
import { expect, it } from 'vitest'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf } from '../../checks/marks.ts'

const drive = (shaft: string, part: string) => `drive main {\n  shaft { diameter: ${shaft} }\n  ${part}\n}\n`
const says = (text: string, check: string) =>
  findingsOf(text, allChecks).findings.some((finding) => finding.check === check)

it.each([
  ['35 mm h9', '35 mm', false],
  ['35 mm h9', '34.94 mm', false],
  ['35 mm h9', '34.93 mm', true],
  ['35 mm', '34.99 mm', true],
  ['1-3/8 in', '35 mm', false], // 34.925 mm
])('a shaft of %s in a bearing of %s: %s', (shaft, bore, is) => {
  expect(says(drive(shaft, `bearing stern { bore: ${bore} }`), 'alignment/bearing-smaller-than-shaft')).toBe(
    is,
  )
})

it.each([
  ['35 mm', '35 mm', true],
  ['35 mm h9', '34.95 mm', false], // the shaft may be 34.938 mm
  ['1-1/4 in', '32 mm', false], // 31.75 mm
])('a shaft of %s with a flange of %s: %s', (shaft, flange, is) => {
  const text = drive(shaft, `coupling { flange-diameter: ${flange} }`)
  expect(says(text, 'alignment/flange-smaller-than-shaft')).toBe(is)
})
