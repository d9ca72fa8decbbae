// What is found about temperature sensors, and what must not pass unnoticed.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf } from '../../checks/marks.ts'
import { resultsIn } from '../results-in.ts'

const job = (sensor: string, motor = 'thermal-class: F', controller = 'sensor-input: pt1000, ntc, ptc') =>
  `job "x" { vessel: "y" }
drive main {
  controller { ${controller} }
  motor m {
    ${motor}
    sensor winding { ${sensor} }
  }
}
`

const found = (text: string) =>
  findingsOf(text, allChecks)
    .findings.filter(({ check }) => check.startsWith('sensor/'))
    .map(({ check, message }) => `${check}: ${message}`)

describe('a sensor', () => {
  it('that is sound has no finding', () => {
    expect(
      found(job('kind: pt1000  warning: 130 degC  derating: 130 degC 100 %, 150 degC 0 %  trip: 150 degC')),
    ).toEqual([])
    expect(found(job('kind: ptc  switches-at: 145 degC'))).toEqual([])
  })

  it('of a Pt100 where the controller reads Pt1000 reads ten times off', () => {
    expect(found(job('kind: pt100'))).toEqual([
      'sensor/not-read: The sensor is a pt100; the controller reads pt1000, ntc or ptc.',
    ])
    expect(found(job('kind: pt100', '', 'sensor-input: none'))).toEqual([
      'sensor/not-read: The sensor is a pt100; the controller reads no sensor.',
    ])
  })

  it('that trips in °F where °C was meant is above its class', () => {
    // 284 degF is 140 degC: the same threshold.
    expect(found(job('kind: pt1000  warning: 266 degF  trip: 284 degF'))).toEqual([])
    expect(found(job('kind: pt1000  warning: 266 degF  trip: 284 degC'))).toEqual([
      'sensor/above-class: The trip is at 284 degC; class F stands 155 degC.',
    ])
  })

  it('that trips at the temperature of its class itself is within', () => {
    expect(found(job('kind: pt1000  trip: 155 degC'))).toEqual([])
    expect(found(job('kind: ptc  switches-at: 156 degC'))).toEqual([
      'sensor/above-class: The switching point is at 156 degC; class F stands 155 degC.',
    ])
  })

  it('that warns at its trip or reduces nothing before it is in the wrong order', () => {
    expect(found(job('kind: pt1000  warning: 150 degC  trip: 150 degC'))).toHaveLength(1)
    expect(
      found(job('kind: pt1000  derating: 100 degC 100 %, 150 degC 100 %, 160 degC 0 %  trip: 150 degC')),
    ).toEqual(['sensor/out-of-order: The current is reduced from 150 degC on; the trip is at 150 degC.'])
  })

  it('that permits more when hotter is found, also above its first share', () => {
    expect(found(job('kind: pt1000  derating: 100 degC 80 %, 120 degC 90 %, 140 degC 0 %'))).toEqual([
      'sensor/derating-rises: The permitted current rises from 80 % to 90 % at 120 degC.',
    ])
  })

  it('whose curve is of another kind is found', () => {
    expect(found(job('kind: ntc  curve: 20 degC 100 ohm, 120 degC 146 ohm'))).toEqual([
      'sensor/curve-contradicts: The resistance of a ntc falls with temperature; that of the curve does not.',
    ])
    expect(found(job('kind: ntc  curve: 20 degC 10 kohm, 60 degC 3 kohm, 120 degC 4 kohm'))).toHaveLength(1)
    // Kiloohms for ohms.
    expect(found(job('kind: pt1000  curve: 0 degC 1000 kohm, 100 degC 1385 kohm'))).toHaveLength(1)
    expect(
      found(job('kind: ntc  r25: 10 kohm  beta: 3380 K  curve: 25 degC 20 kohm, 100 degC 2 kohm')),
    ).toHaveLength(1)
    expect(
      found(job('kind: ntc  r25: 10 kohm  beta: 3380 K  curve: 25 degC 10 kohm, 100 degC 1.02 kohm')),
    ).toEqual([])
  })

  it('of a motor without class, or a curve without points, is not judged and breaks nothing', () => {
    expect(found(job('kind: pt1000  trip: 290 degC', ''))).toEqual([])
    expect(found(job('kind: ntc  trip: 150 degC'))).toEqual([])
    expect(found(job('trip: 150 degC'))).toEqual([])
  })

  it('in a controller or a battery is not read through the motor', () => {
    expect(
      found(`drive main {
  controller {
    sensor-input: pt1000
    sensor heat-sink { kind: ntc }
  }
}
`),
    ).toEqual([])
  })

  it('is asked for where the controller reads one or the motor is large', () => {
    const bare = (motor: string, controller: string) =>
      found(`job "x" { vessel: "y" }
drive main {
  controller { ${controller} }
  motor m { ${motor} }
}
`)
    expect(bare('power: 2 kW', 'sensor-input: pt1000')).toHaveLength(1)
    expect(bare('power: 15 kW', 'sensor-input: none')).toHaveLength(1)
    expect(bare('power: 2 kW', 'sensor-input: none')).toEqual([])
    expect(bare('power: 2 kW', '')).toEqual([])
  })

  it('of two drives is judged in each, with what each has of its own', () => {
    const text = `${job('kind: pt1000  trip: 150 degC')}drive starboard {
  like: main
  motor m { thermal-class: B }
}
`
    expect(found(text)).toEqual([
      'sensor/above-class: starboard.m.winding: The trip is at 150 degC; class B stands 130 degC.',
    ])
  })
})

describe('the figures of a sensor', () => {
  const results = (sensor: string) =>
    resultsIn(job(sensor)).results.flatMap(({ figure, amount }) =>
      figure.id.startsWith('sensor/')
        ? [[figure.id, ...Object.values(amount.key ?? {}), Number(amount.value.toPrecision(5))]]
        : [],
    )

  it('are its resistances at warning and trip: tables per IEC 60751', () => {
    expect(results('kind: pt1000  warning: 100 degC  trip: 150 degC')).toEqual([
      ['sensor/resistance', 'warning', 1385.1],
      ['sensor/resistance', 'trip', 1573.3],
    ])
  })

  it('are finite and none throws, of all that can be written', () => {
    const value = (unit: string, low: number, high: number) =>
      fc.option(fc.double({ min: low, max: high, noNaN: true }).map((n) => `${n.toFixed(3)} ${unit}`))
    const sensors = fc.record({
      kind: fc.option(fc.constantFrom('pt100', 'pt1000', 'ntc', 'kty84-130', 'ptc')),
      r25: value('ohm', 1, 1e7),
      beta: value('K', 500, 1e4),
      warning: value('degC', -60, 300),
      trip: value('degC', -60, 300),
      'switches-at': value('degC', -60, 300),
      'lead-resistance': value('ohm', 0, 1000),
      curve: fc.option(
        fc
          .tuple(
            fc.double({ min: 0.1, max: 1e8, noNaN: true }),
            fc.double({ min: 0.1, max: 1e8, noNaN: true }),
          )
          .map(([a, b]) => `0 degC ${a.toFixed(2)} ohm, 100 degC ${b.toFixed(2)} ohm`),
      ),
    })
    fc.assert(
      fc.property(sensors, (facts) => {
        const text = job(
          Object.entries(facts)
            .flatMap(([name, said]) => (said === null ? [] : [`${name}: ${said}`]))
            .join('  '),
        )
        const { results: all } = resultsIn(text)
        for (const { amount } of all) expect(Number.isFinite(amount.value), text).toBe(true)
      }),
      { numRuns: 60 },
    )
  })
})
