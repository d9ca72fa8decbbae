// What an editor shows of tests and sensors.
import { describe, expect, it } from 'vitest'
import { checkHover, hoverAt } from '../../editor/fixture.ts'

const drive = (test: string, head = 'te$0st') => `job "x" { vessel: "y" }
drive main {
  motor m {
    voltage: 58 V
    terminals: U, V, W
    sensor winding { kind: pt1000  warning: 130 degC  trip: 150 degC }
  }
  controller { capacitance: 6.8 mF  discharge-resistance: 10 kohm }
  ${head} t1 { ${test}  taken: 2026-03-01 }
}
`

describe('the hover of a test', () => {
  it('of insulation gives the resistance at 40 °C, its limit and law, and the caution', () => {
    checkHover(
      drive('kind: insulation-resistance  on: m  voltage: 500 V  resistance: 180 Mohm  temperature: 18 degC'),
      '39.2 Mohm',
      'at least 5 Mohm (IEEE 43-2013, at 40 °C)',
      'halving for each 10 K',
      'the winding is random-wound',
      '**Caution.**',
      'the voltage of the tester destroys them',
    )
  })

  it('without the temperature gives the caution alone', () => {
    const shown = hoverAt(drive('kind: insulation-resistance  on: m  voltage: 500 V  resistance: 180 Mohm'))
    expect(shown?.markdown).not.toContain('Mohm (')
    expect(shown?.markdown).toContain('**Caution.**')
  })

  it('of a sensor gives its reading and that of the thermometer', () => {
    checkHover(
      drive('kind: sensor  on: m.winding  resistance: 1078 ohm  temperature: 20 degC'),
      '20 degC',
      'measured beside it',
    )
  })

  it('of discharge gives the time by the resistor: 68 s × ln(98/20) = 108 s', () => {
    checkHover(
      drive('kind: discharge  on: controller  voltage: 98 V  end-voltage: 20 V  time: 110 s'),
      '108 s',
      'measured: 110 s',
    )
  })
})

describe('the hover of a drive', () => {
  it('lists what its tests came to', () => {
    checkHover(
      drive(
        'kind: insulation-resistance  on: m  voltage: 500 V  resistance: 1 Mohm  temperature: 40 degC',
        'test',
      ).replace('drive main', 'dri$0ve main'),
      'test `t1` | 1 Mohm: outside',
    )
  })
})
