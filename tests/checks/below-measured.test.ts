// A figure that is other than zero and smaller than anything of a boat: a thousandth of an atom, which is about 1e-10 m. From memory.
import { expect, it } from 'vitest'
import { allChecks } from '../../server/src/areas/index.ts'
import { findingsOf } from './marks.ts'

const checks = allChecks.filter(({ id }) => id === 'job/value-outside')
const outside = (text: string) =>
  findingsOf(`drive main { ${text} }\n`, checks)
    .findings.filter(({ check }) => check === 'job/value-outside')
    .map(({ message }) => message)

it.each([
  ['bearing b { at: 1e-308 m }', '1e-308 m', '0 m, or at least 1e-13 m'],
  // A double takes this for zero.
  ['bearing b { at: 1e-400 m }', '1e-400 m', '0 m, or at least 1e-13 m'],
  ['bearing b { at: 0.00000000000001 m }', '0.00000000000001 m', '0 m, or at least 1e-13 m'],
  ['target { shaft-droop: -1e-12 mm }', '-1e-12 mm', '0 mm, or at least 1e-10 mm'],
  ['target { shaft-slope: 1e-308 mrad }', '1e-308 mrad', '0 mrad, or at least 1e-10 mrad'],
  ['bed { foot a { across: 1e-300 in port } }', '1e-300 in', '0 in, or at least 4e-12 in'],
  ['reading r { gaps: top 1e-300 mm, bottom 1 mm }', '1e-300 mm', '0 mm, or at least 1e-10 mm'],
  ['shaft { diameter: 35 mm ± 1e-300 mm }', '1e-300 mm', '0 mm, or at least 1e-10 mm'],
])('%s is refused', (text, written, allowed) => {
  expect(outside(text)).toEqual([`${written} is outside its range: ${allowed}.`])
})

it.each([
  'bearing b { at: 0 m }',
  'bearing b { at: 0.00 mm }',
  'bearing b { at: 0e9 m }',
  'bearing b { at: 0.0001 mm }',
  'reading r { offsets: top 0.000000001 mm, bottom -0.000000001 mm }',
  'target { shaft-droop: -0.0001 mm  maker-slope-up: 0.001 mrad }',
  'bed { foot a { across: 0 mm port  growth: 0 mm } }',
  'reading r { gaps: top 0 mm, bottom 1 mm }',
  // What arithmetic leaves of what is equal is no figure that anyone wrote: 0.1 + 0.2 - 0.3 is 5.6e-17 in doubles.
  'bearing b { at: 0.1 m + 0.2 m - 0.3 m }',
])('%s is taken', (text) => {
  expect(outside(text)).toEqual([])
})
