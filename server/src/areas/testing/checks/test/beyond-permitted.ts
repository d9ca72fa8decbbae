import { at, check, theJobFile } from '../../../../checks/check.ts'
import { reaches } from '../../../../engineering/compare.ts'
import { unlessReplaced } from '../../history.ts'
import { measuredFact, measuredOf } from '../../plans/measured.ts'

export default check({
  id: 'test/beyond-permitted',
  severity: 'error',
  title: 'Measured value above what is permitted',
  why: 'The limit is that of the job. Where the job states none, run-out of a motor is compared with IEC 60072-1 by the diameter.',
  source: theJobFile('what the test states as permitted, else IEC 60072-1 in EASA AR100-2015'),
  on: 'test',
  fires: `drive main {
  motor propulsion { power: 15 kW }
  test t1 {
    kind: run-out
    on: propulsion
    taken: 2026-03-12
    run-out: 0.08 mm
#            ^^^^^^^ 0.05 mm
    where: shaft
    diameter: 38 mm
  }
}`,
  quiet: `drive main {
  motor propulsion { power: 15 kW }
  test t1 {
    kind: run-out
    on: propulsion
    taken: 2026-03-12
    run-out: 0.03 mm
    where: shaft
    diameter: 38 mm
  }
}`,
  run: (_facts, lookup) => {
    const fact = measuredFact(lookup.block)?.fact
    const measured = measuredOf(lookup.block, lookup)
    if (!fact || measured?.most === undefined || reaches(measured.most, measured.value)) return []
    const { what, quantity, value, most, limitFrom } = measured
    const [found, limit] = [lookup.show(value, quantity), lookup.show(most, quantity)]
    return unlessReplaced(lookup, [
      at(fact, {
        message: `The ${what} is ${found}; ${limit} is permitted.`,
        detail: `Limit: ${limitFrom}.`,
        todo: 'Find the cause, then measure again.',
        found,
        limit: `at most ${limit}`,
      }),
    ])
  },
})
