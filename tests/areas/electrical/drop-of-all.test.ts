// Above the whole voltage of the supply a drop is no share of it (Ohm's law: no such current flows): nothing arrives.
import { expect, it } from 'vitest'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf } from '../../checks/marks.ts'

/** 100 A out and back through 900 m at 105 °C, 1.334 times 20 °C (IEC 60028): 95 mm² has 0.210 Ω/km, 16 mm² 1.24 Ω/km (IEC 60228). */
const drop = (conductor: string) =>
  findingsOf(
    `battery house { nominal: 96 V  window: 84..108 V }
drive main {
  controller { efficiency: 96 % }
  cable feed { from: house  to: controller  conductor: ${conductor}  length: 900 m  insulation: 105 degC  design-current: 100 A }
}`,
    allChecks,
  ).findings.find(({ check }) => check === 'cable/voltage-drop')

it('is a share of the supply as long as something is left', () => {
  expect(drop('95 mm2')).toMatchObject({
    severity: 'warning',
    message: 'The voltage drop is 50.4 V (60 %); 3 % is allowed.',
  })
})

it('is all of it where nothing is left, and the motor cannot run', () => {
  expect(drop('16 mm2')).toMatchObject({
    severity: 'error',
    message: 'The cable would lose all of the 84 V it gets: the motor cannot run.',
    detail: expect.stringContaining('the drop is 298 V'),
  })
})
