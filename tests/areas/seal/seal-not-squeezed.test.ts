// A bellows at its free length presses no faces together, whatever is the most it may be squeezed by (common practice, no source).
import { expect, it } from 'vitest'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf } from '../../checks/marks.ts'

const found = (compression: string, fitted: string) =>
  findingsOf(
    `drive main {\n  seal { compression: ${compression}  free-length: 5-1/4 in  fitted-length: ${fitted} }\n}\n`,
    allChecks,
  ).findings.filter(({ check }) => check === 'seal/compression-outside')

it.each([
  // 5-1/4 in is 133.35 mm.
  ['max 29 mm', '145 mm', 'stretched'],
  ['max 29 mm', '133.35 mm', 'not compressed'],
  ['26 mm +3/-2 mm', '133.35 mm', 'compressed 0'],
])('%s wanted, fitted at %s: %s, and the rotor goes towards the bellows', (wanted, fitted, words) => {
  const [finding, ...more] = found(wanted, fitted)
  expect(more).toEqual([])
  expect(finding?.message).toContain(words)
  expect(finding?.todo).toContain('towards the bellows')
})

it.each([
  ['max 29 mm', '133.25 mm'],
  ['0 mm .. 29 mm', '133.35 mm'],
])('%s wanted, fitted at %s: nothing to say', (wanted, fitted) => {
  expect(found(wanted, fitted)).toEqual([])
})
