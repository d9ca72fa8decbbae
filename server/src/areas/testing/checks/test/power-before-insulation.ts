import { at, check, commonPractice } from '../../../../checks/check.ts'
import { isPoweredFirst } from '../../plans/power-order.ts'

export default check({
  id: 'test/power-before-insulation',
  severity: 'error',
  title: 'Under power before the insulation was proved',
  why: 'A winding with low insulation breaks down when power first comes on. Its insulation is measured before, with the controller disconnected, and the record is dated no later.',
  source: commonPractice('insulation proved before power: common practice, no source'),
  on: 'test',
  needs: { taken: 'test.taken' },
  fires: `drive main {
  motor propulsion { voltage: 58 V }
  test t1 { kind: rotation  on: propulsion  taken: 2026-03-12  turns: clockwise  coupled: no }
#                                                  ^^^^^^^^^^ insulation
}`,
  quiet: `drive main {
  motor propulsion { voltage: 58 V }
  test t0 {
    kind: insulation-resistance
    on: propulsion
    taken: 2026-03-11
    voltage: 500 V
    resistance: 180 Mohm
    temperature: 18 degC
  }
  test t1 { kind: rotation  on: propulsion  taken: 2026-03-12  turns: clockwise  coupled: no }
}`,
  run: ({ taken }, lookup) =>
    isPoweredFirst(lookup.block, lookup)
      ? [
          at(taken, {
            message: 'No test of insulation resistance of the motor is dated before this test under power.',
            todo: 'Add the record of that test, or measure the insulation now and correct what it shows.',
          }),
        ]
      : [],
})
