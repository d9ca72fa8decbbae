// A cable whose insulation the job leaves open: too thin where even the best insulation in the tables would not do, and otherwise not judged.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../server/src/areas/index.ts'
import { findingsOf } from './marks.ts'

const checks = allChecks.filter(({ id }) => id === 'cable/undersized')
const found = (facts: string) => {
  const text = `battery house { nominal: 96 V  window: 84..108 V }
drive main {
  controller { efficiency: 96 % }
  cable feed {
    from: house
    to: controller
    length: 2 m
    place: machinery-space
    ${facts}
  }
}
`
  return findingsOf(text, checks).findings.filter(({ check }) => check === 'cable/undersized')
}

// 25 mm² at 200 °C: 200 A (ISO 13297 Table A.1, from memory), in a machinery space √(150 / 170) of it: 187.9 A.
describe.each([
  ['not stated', ''],
  ['not known yet', 'insulation: ?'],
])('insulation that is %s', (_, insulation) => {
  it('fails a cable that the best one would fail', () => {
    expect(found(`conductor: 25 mm2\ndesign-current: 190 A\n${insulation}`)).toMatchObject([
      {
        severity: 'error',
        message: 'The cable can carry 187 A with the best insulation, but must carry 190 A.',
        todo: expect.stringContaining('No insulation in the tables would do.'),
      },
    ])
  })
  it('passes no verdict on one that the best one would pass', () => {
    expect(found(`conductor: 25 mm2\ndesign-current: 185 A\n${insulation}`)).toEqual([])
  })
})

it('above the tables the maker may still allow more', () => {
  // 150 mm² at 200 °C: 560 A (from memory), in a machinery space 526 A.
  expect(found('conductor: 240 mm2\ndesign-current: 540 A')).toMatchObject([
    {
      severity: 'error',
      message: 'For the best insulation the tables show at least 526 A for it, but it must carry 540 A.',
      todo: expect.stringContaining('ask the cable maker'),
    },
  ])
})

it('insulation that cannot be used as written is no insulation left open', () => {
  expect(found('conductor: 25 mm2\ndesign-current: 900 A\ninsulation: 105 mm')).toEqual([])
})

it('what is found without the insulation is found with any', () => {
  const classes = ['60', '70', '75', '80', '85', '90', '105', '125', '150', '200']
  const size = fc.constantFrom('1 mm2', '10 mm2', '12 AWG', '2 AWG', '4/0 AWG', '95 mm2', '240 mm2')
  fc.assert(
    fc.property(size, fc.integer({ min: 1, max: 900 }), (conductor, amps) => {
      const facts = `conductor: ${conductor}\ndesign-current: ${amps} A`
      const open = found(facts)
      const stated = classes.map((degrees) => found(`${facts}\ninsulation: ${degrees} degC`))
      expect(open.length > 0).toBe(stated.every(({ length }) => length > 0))
    }),
    { numRuns: 60 },
  )
})
