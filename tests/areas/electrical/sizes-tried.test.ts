// The smallest conductor that passes, and why the smaller ones do not; sizes of AWG, SAE and metric cable told apart.
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../../server/src/areas/index.ts'
import { saeArea } from '../../../server/src/quantity/units.ts'
import { findingsOf } from '../../checks/marks.ts'
import { checkHover } from '../../editor/fixture.ts'

const boat = (feed: string, controller = '') => `battery house { nominal: 96 V  window: 84..108 V }
drive main {
  motor m { power: 15 kW  voltage: 58 V  power-factor: 0.9  efficiency: 92 % }
  controller { input: 72..120 V  efficiency: 96 %  ${controller} }
  cable feed {
    from: house  to: controller  insulation: 105 degC  place: machinery-space  ${feed}
  }
}
`
const found = (text: string, id: string) =>
  findingsOf(text, allChecks).findings.find(({ check }) => check === id)

describe('the smallest conductor that passes', () => {
  // 15 kW / (0.92 · 0.96 · 84 V) = 202.2 A, and with the drop in each (0.780 and 0.554 Ω/km, IEC 60228) 204.8 and 204.02 A, rounded up. ISO Table A.1 (from memory), 105 °C in 50 °C with 0.85: 25 mm² 144 A, 35 mm² 178 A, 50 mm² 229 A.
  it('is shown with the reason for each that does not', () => {
    const text = boat('conductor: 25 mm2  length: 2.5 m')
    checkHover(
      text.replace('cable feed', 'cable $0feed'),
      /25 mm².*can carry 144 A, must carry 205 A/,
      /35 mm².*can carry 178 A, must carry 205 A/,
      /50 mm².*no standard fuse/,
      /70 mm².*the smallest that passes/,
    )
  })
})

describe('a gauge of SAE cable', () => {
  it('holds less copper than the AWG of its number, and carries less', () => {
    const carries = (conductor: string) => {
      const text = boat(`conductor: ${conductor}  length: 2.5 m`).replace('15 kW', '150 kW')
      return found(text, 'cable/undersized')?.data?.['carries'] as number
    }
    for (const gauge of ['6', '2', '2/0', '4/0'])
      expect(carries(`${gauge} SAE`)).toBeLessThan(carries(`${gauge} AWG`))
    expect(saeArea('2/0')).toBeCloseTo(63.39e-6, 8)
  })

  it('that is in no table is said so', () => {
    const finding = found(boat('conductor: 5/0 SAE  length: 2.5 m'), 'job/gauge-unknown')
    expect(finding?.todo).toContain('SAE')
  })
})
