import { atHead, check, theLanguage } from '../../../../checks/check.ts'
import { factOf } from '../../../../job/model.ts'
import { leakageWithoutLimit, measuredOf } from '../../plans/measured.ts'

/** Of these the time alone proves nothing: the voltage at the end counts. */
const judgedElsewhere: readonly unknown[] = ['precharge', 'discharge']

export default check({
  id: 'test/limit-missing',
  severity: 'information',
  title: 'Measured value without a limit',
  why: 'The record shows a value, and nothing says whether it is good. No standard at hand has a limit for it.',
  source: theLanguage,
  on: 'test',
  fires: `drive main {
  motor propulsion { power: 15 kW }
  test t1 {
# ^^^^^^^ permitted
    kind: run-out
    on: propulsion
    taken: 2026-03-12
    run-out: 0.08 mm
    where: shaft
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
    permitted: max 0.05 mm
  }
}`,
  run: (_facts, lookup) => {
    const { block } = lookup
    const kind = factOf(block, 'test.kind')?.value
    const measured = measuredOf(block, lookup) ?? leakageWithoutLimit(block, lookup)
    if (!measured || measured.most !== undefined || judgedElsewhere.includes(kind)) return []
    return [
      atHead(block, {
        message: `Nothing says what is permitted for the ${measured.what}.`,
        todo: `State \`permitted\` as the maker or a standard has it${kind === 'run-out' ? ', or the diameter where it was read' : ''}.`,
        found: lookup.show(measured.value, measured.quantity),
      }),
    ]
  },
})
