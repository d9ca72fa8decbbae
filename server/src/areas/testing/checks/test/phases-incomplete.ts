import { at, check, theJobFile } from '../../../../checks/check.ts'
import { elide } from '../../../../quantity/elide.ts'
import { phasesMeasured, phasesOf } from '../../plans/balance.ts'

export default check({
  id: 'test/phases-incomplete',
  severity: 'error',
  title: 'Phase not measured, measured twice or unknown',
  why: 'Only all phases together show whether they are balanced. A mark that the motor does not have may be of another motor.',
  source: theJobFile('the terminals of the motor'),
  on: 'test',
  fires: `drive main {
  motor propulsion { terminals: U, V, W }
  test t1 {
    kind: phase-resistance
    on: propulsion
    taken: 2026-03-12
    resistances: U-V 14.2 mohm, V-W 14.3 mohm
#                ^^^^^^^^^^^^^^^^^^^^^^^^^^^^ U-W
  }
}`,
  quiet: `drive main {
  motor propulsion { terminals: U, V, W }
  test t1 {
    kind: phase-resistance
    on: propulsion
    taken: 2026-03-12
    resistances: U-V 14.2 mohm, V-W 14.3 mohm, W-U 14.1 mohm
  }
}`,
  run: (_facts, lookup) => {
    const phases = phasesOf(lookup.block)
    const measured = phasesMeasured(lookup.block, lookup)
    if (!phases || !measured) return []
    const { missing, unknown, twice } = measured
    const found = (message: string, todo: string) => [at(phases, { message, todo })]
    if (unknown[0] !== undefined)
      return found(
        `The motor has no ${elide(unknown[0])}.`,
        'Write the marks as the motor has them, and check which motor was tested.',
      )
    if (twice[0] !== undefined)
      return found(`${elide(twice[0])} was measured twice.`, 'Correct the marks, and write each once.')
    return missing.length > 0
      ? found(`Not measured: ${elide(missing.join(', '))}.`, 'Measure all phases, one after the other.')
      : []
  },
})
