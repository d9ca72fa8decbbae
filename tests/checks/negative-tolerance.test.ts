// A tolerance is how far a size may be off, to either side: never below zero. Common practice, no source.
import { expect, it } from 'vitest'
import { allChecks } from '../../server/src/areas/index.ts'
import { findingsOf } from './marks.ts'

const found = (fact: string) =>
  findingsOf(`drive main { shaft { ${fact} } }`, allChecks).findings.filter(
    ({ check, severity }) => severity === 'error' && check.startsWith('job/'),
  )

it.each(['35 mm ± -0.05 mm', '35 mm ±(-0.05 mm)', '1-3/8 in ± -0.002 in'])('%s is a finding', (size) => {
  expect(found(`diameter: ${size}`)).toMatchObject([
    { check: 'job/value-outside', message: expect.stringMatching(/at least 0 (mm|in)\.$/) },
  ])
})

it.each(['35 mm ± 0.05 mm', '35 mm ± 0 mm', '35 mm +-0.05 mm', '35 mm +0/-0.05 mm', '35 mm -0.05/+0.01 mm'])(
  '%s is none',
  (size) => {
    expect(found(`diameter: ${size}`)).toEqual([])
  },
)
