// What is found about records of tests, and what must not pass unnoticed.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf } from '../../checks/marks.ts'
import { resultsIn } from '../results-in.ts'

const motor = `  motor m {
    voltage: 58 V
    terminals: U, V, W
    thermal-class: F
    sensor s { kind: pt1000 }
    sensor n { kind: ntc  r25: 10 kohm  beta: 3380 K }
    sensor k { kind: kty84-130 }
    sensor p { kind: ptc  switches-at: 145 degC }
  }
`
const proof = `  test proof {
    kind: insulation-resistance
    on: m
    taken: 2026-03-01
    voltage: 500 V
    resistance: 180 Mohm
    temperature: 18 degC
  }
`
const record = (facts: string, name = 't') => `  test ${name} { ${facts} }\n`
const job = (tests: string, around = motor) => `job "x" { vessel: "y" }
battery house { nominal: 96 V  window: 84..108 V }
drive main {
${around}  controller { capacitance: 6.8 mF }
  cable feed { from: house  to: controller }
${tests}}
`

const found = (text: string) =>
  findingsOf(text, allChecks)
    .findings.filter(({ check }) => check.startsWith('test/'))
    .map(({ check, severity, message }) => `${severity} ${check}: ${message}`)
const foundIn = (facts: string) => found(job(proof + record(facts)))

const insulation = (facts: string) =>
  found(job(record(`kind: insulation-resistance  on: m  taken: 2026-03-01  ${facts}`)))

describe('an insulation test', () => {
  it('of 0 Mohm is too low, also where the temperature is not stated', () => {
    expect(insulation('voltage: 500 V  resistance: 0 Mohm  temperature: 18 degC')).toEqual([
      'error test/insulation-low: The insulation resistance is 0 mohm at 40 degC; at least 5 Mohm is required.',
    ])
    expect(insulation('voltage: 500 V  resistance: 0 Mohm')).toEqual([
      'error test/insulation-low: The insulation resistance is 0 mohm; at least 5 Mohm is required.',
    ])
  })

  it('without temperature is not judged, and not fine', () => {
    expect(insulation('voltage: 500 V  resistance: 100 Mohm')).toEqual([
      'warning test/insulation-unknown: The temperature of the winding is not stated, so its 100 Mohm cannot be compared.',
    ])
  })

  it('of a cold winding needs four times as much at 20 °C', () => {
    expect(insulation('voltage: 500 V  resistance: 20 Mohm  temperature: 20 degC')).toEqual([])
    expect(insulation('voltage: 500 V  resistance: 19.9 Mohm  temperature: 20 degC')).toHaveLength(1)
    expect(insulation('voltage: 500 V  resistance: 20 Mohm  temperature: 68 degF')).toEqual([])
  })

  it('with 20 V proves nothing, with 1000 V may damage', () => {
    expect(insulation('voltage: 20 V  resistance: 180 Mohm  temperature: 20 degC')).toEqual([
      'warning test/insulation-voltage: The insulation was tested with 20 V; usual: 250 V to 500 V.',
    ])
    expect(insulation('voltage: 1000 V  resistance: 180 Mohm  temperature: 20 degC')).toHaveLength(1)
  })

  it('is compared with what the job permits', () => {
    expect(
      insulation('voltage: 500 V  resistance: 100 Mohm  temperature: 40 degC  permitted: min 150 Mohm'),
    ).toHaveLength(1)
    expect(
      insulation('voltage: 500 V  resistance: 100 Mohm  temperature: 40 degC  permitted: max 150 Mohm'),
    ).toEqual([
      'error test/permitted-unfit: The limit of a test of insulation-resistance is min and a resistance.',
    ])
  })

  it('has an index below 1 where the insulation is wet', () => {
    const index = (late: string) =>
      insulation(`voltage: 500 V  resistance: 180 Mohm  temperature: 40 degC  resistance-10-min: ${late}`)
    expect(index('100 Mohm')).toEqual([
      'warning test/polarisation-index-low: The polarisation index is 0.556; at least 2 is usual.',
    ])
    expect(index('360 Mohm')).toEqual([])
    expect(
      insulation('voltage: 500 V  resistance: 6000 Mohm  temperature: 40 degC  resistance-10-min: 6000 Mohm'),
    ).toEqual([])
  })

  it('of a battery needs 100 ohm for each volt, of a cable 1 Mohm', () => {
    const on = (part: string, resistance: string) =>
      found(
        job(
          record(
            `kind: insulation-resistance  on: ${part}  taken: 2026-03-01  voltage: 500 V  resistance: ${resistance}`,
          ),
        ),
      )
    expect(on('house', '10 kohm')).toEqual([
      'error test/insulation-low: The insulation resistance is 10000 ohm; at least 10800 ohm is required.',
    ])
    expect(on('house', '11 kohm')).toEqual([])
    expect(on('feed', '0.9 Mohm')).toHaveLength(1)
    expect(on('feed', '1 Mohm')).toEqual([])
  })
})

describe('a test of a sensor', () => {
  const sensor = (on: string, facts: string) =>
    foundIn(`kind: sensor  on: m.${on}  taken: 2026-03-01  ${facts}`)
  const why = (on: string, facts: string) =>
    findingsOf(job(proof + record(`kind: sensor  on: m.${on}  taken: 2026-03-01  ${facts}`)), allChecks)
      .findings.filter(({ check }) => check === 'test/sensor-implausible')
      .map(({ detail }) => detail)

  it('that agrees has no finding', () => {
    expect(sensor('s', 'resistance: 1078 ohm  temperature: 20 degC')).toEqual([])
    expect(sensor('n', 'resistance: 12.14 kohm  temperature: 20 degC')).toEqual([])
    expect(sensor('k', 'resistance: 581 ohm  temperature: 20 degC')).toEqual([])
    expect(sensor('p', 'resistance: 300 ohm  temperature: 20 degC')).toEqual([])
  })

  it.each([
    ['s', 'resistance: 108 ohm  temperature: 20 degC', 'The resistance is that of a pt100.'],
    ['s', 'resistance: 1078 kohm  temperature: 20 degC', 'Ohm and kiloohm may be exchanged.'],
    ['n', 'resistance: 12.14 ohm  temperature: 20 degC', 'Ohm and kiloohm may be exchanged.'],
    ['s', 'resistance: 1078 ohm  temperature: 68 degC', 'The temperature may be in degF.'],
    ['s', 'resistance: 0 ohm  temperature: 20 degC', 'Its circuit is shorted.'],
    ['s', 'resistance: 50 Mohm  temperature: 20 degC', 'Its circuit is open.'],
    ['n', 'resistance: 50 Mohm  temperature: 20 degC', 'Its circuit is open.'],
    ['k', 'resistance: 400 ohm  temperature: 20 degC', 'A KTY reads wrong with its leads exchanged.'],
    ['s', 'resistance: 581 ohm  temperature: 20 degC', 'The resistance is that of a kty84-130.'],
    ['p', 'resistance: 0 ohm  temperature: 20 degC', 'Its circuit is shorted.'],
    ['p', 'resistance: 4 kohm  temperature: 20 degC', 'It has switched, or it is no trip thermistor.'],
    ['p', 'resistance: 200 ohm  temperature: 155 degC', 'It has not switched.'],
  ])('%s with %s: %s %s', (on, facts, detail) => {
    expect(why(on, facts)).toEqual([detail])
  })

  it('beyond its range is found without a thermometer, within it is not judged', () => {
    expect(sensor('n', 'resistance: 3 Mohm')).toEqual([
      'error test/sensor-implausible: The sensor reads below -55 degC.',
    ])
    expect(sensor('s', 'resistance: 1078 ohm')).toEqual([])
  })
})

describe('phases', () => {
  const phases = (facts: string) => foundIn(`kind: phase-resistance  on: m  taken: 2026-03-01  ${facts}`)

  it('that differ are found, by the limit of the job or the usual one', () => {
    expect(phases('resistances: U-V 14 mohm, V-W 14 mohm, W-U 15.5 mohm')).toEqual([
      'warning test/unbalanced: The resistances of the phases differ by 6.9 % from their mean; 5 % is usual.',
    ])
    expect(phases('resistances: U-V 14 mohm, V-W 14 mohm, W-U 15.5 mohm  permitted: max 3 %')).toEqual([
      'error test/unbalanced: The resistances of the phases differ by 6.9 % from their mean; 3 % is permitted.',
    ])
    expect(phases('resistances: U-V 14 mohm, V-W 14 mohm, W-U 15.5 mohm  permitted: max 10 %')).toEqual([])
  })

  it('in different units are one', () => {
    expect(phases('resistances: U-V 14 mohm, V-W 0.014 ohm, W-U 14 mohm')).toEqual([])
  })

  it('that are missing, unknown, twice or all zero are found', () => {
    expect(phases('resistances: U-V 14 mohm, V-W 14 mohm')).toHaveLength(1)
    expect(phases('resistances: U-V 14 mohm, V-W 14 mohm, A-B 14 mohm')).toEqual([
      'error test/phases-incomplete: The motor has no A-B.',
    ])
    expect(phases('resistances: U-V 14 mohm, V-U 14 mohm, W-U 14 mohm')).toEqual([
      'error test/phases-incomplete: V-U was measured twice.',
    ])
    expect(phases('resistances: U-V 0 ohm, V-W 0 ohm, W-U 0 ohm')).toEqual([
      'error test/unbalanced: All phases measure zero.',
    ])
    expect(
      foundIn('kind: no-load-current  on: m  taken: 2026-03-02  currents: U 12 A, V 12 A, W 16 A'),
    ).toHaveLength(1)
  })
})

describe('records', () => {
  it('of one kind on one part: the last counts, the earlier is history', () => {
    const low = 'kind: insulation-resistance  on: m  voltage: 500 V  temperature: 40 degC'
    const text = job(
      record(`${low}  taken: 2026-03-01  resistance: 1 Mohm`, 'first') +
        record(`${low}  taken: 2026-03-02  resistance: 100 Mohm`, 'second'),
    )
    expect(found(text)).toEqual([
      'information test/insulation-low: The insulation resistance is 1 Mohm at 40 degC; at least 5 Mohm is required.',
    ])
    expect(found(text.replace('2026-03-02', '2026-02-28'))).toEqual([
      'error test/insulation-low: The insulation resistance is 1 Mohm at 40 degC; at least 5 Mohm is required.',
    ])
  })

  it('on a part that the test cannot be of are found', () => {
    expect(foundIn('kind: sensor  on: m  taken: 2026-03-01  resistance: 1078 ohm')).toEqual([
      'error test/wrong-part: A test of sensor is done on a sensor, not on a motor.',
    ])
    expect(
      foundIn('kind: rotation  on: controller  taken: 2026-03-01  turns: clockwise  coupled: no'),
    ).toContain('error test/wrong-part: A test of rotation is done on a motor, not on a controller.')
  })

  it('under power come after that of the insulation', () => {
    const rotation = record('kind: rotation  on: m  taken: 2026-03-01  turns: clockwise  coupled: no')
    const isEarly = (text: string) => found(text).some((one) => one.includes('power-before-insulation'))
    expect(isEarly(job(rotation))).toBe(true)
    expect(isEarly(job(proof + rotation))).toBe(false)
    expect(isEarly(job(proof.replace('2026-03-01', '2026-03-02') + rotation))).toBe(true)
    const precharge = record(
      'kind: precharge  on: controller  taken: 2026-02-01  voltage: 98 V  end-voltage: 97 V  time: 1 s',
    )
    expect(isEarly(job(proof + precharge))).toBe(true)
  })

  it('of two drives are each of its own motor', () => {
    const twin = (
      tests: string,
    ) => `${job(proof).replace('vessel: "y"', 'vessel: "y"  status: as-built')}drive starboard {
  like: main
${tests}}
`
    const missing = (text: string) =>
      found(text)
        .filter((one) => one.includes('test/missing'))
        .map((one) => one.split('record: ')[1])
    expect(missing(twin(''))[0]).toMatch(/^phase-resistance of m/)
    expect(missing(twin(''))[1]).toMatch(/^insulation-resistance of m/)
    expect(missing(twin(proof))[1]).toMatch(/^phase-resistance of m/)
  })

  it('of discharge say what may still be touched', () => {
    const left = (end: string) =>
      foundIn(
        `kind: discharge  on: controller  taken: 2026-03-01  voltage: 98 V  end-voltage: ${end}  time: 60 s`,
      )
    expect(left('61 V')).toEqual([
      'error test/still-charged: After discharge 61 V is left; dry skin may touch up to 60 V.',
    ])
    expect(left('31 V')).toEqual([
      'warning test/still-charged: After discharge 31 V is left; wet skin may touch less than 30 V.',
    ])
    expect(left('29 V')).toEqual([])
  })

  it('without a limit ask for one', () => {
    expect(foundIn('kind: bonding  on: feed  taken: 2026-03-01  resistance: 20 mohm')).toEqual([
      'information test/limit-missing: Nothing says what is permitted for the resistance of the bond.',
    ])
    expect(
      foundIn('kind: bonding  on: feed  taken: 2026-03-01  resistance: 20 mohm  permitted: max 10 mohm'),
    ).toHaveLength(1)
    expect(
      foundIn('kind: earth-leakage  on: house  taken: 2026-03-01  current: 6 mA  permitted: max 5 mA'),
    ).toHaveLength(1)
    const bus = (cable: string, resistance: string) =>
      found(
        `job "x" { vessel: "y" }
battery house { nominal: 96 V  window: 84..108 V }
busbar bus { current: 600 A }
${cable}
test t { kind: earth-leakage  on: bus  taken: 2026-03-01  resistance: ${resistance} }
drive main { }
`,
      )
    expect(bus('cable lead { from: house  to: bus }', '11 kohm')).toEqual([])
    expect(bus('cable lead { from: house  to: bus }', '10 kohm')).toEqual([
      'error test/insulation-low: The insulation resistance is 10000 ohm; at least 10800 ohm is required.',
    ])
    expect(bus('', '10 kohm')).toEqual([
      'information test/limit-missing: Nothing says what is permitted for the resistance to earth.',
    ])
    expect(
      foundIn('kind: run-out  on: shaft  taken: 2026-03-01  run-out: 0.1 mm  where: shaft'),
    ).toHaveLength(1)
  })
})

describe('the figures of tests', () => {
  it('correct insulation to 40 °C: 150 Mohm at 20 °C are 37.5 Mohm by halving', () => {
    const { results } = resultsIn(
      job(
        proof.replace('180 Mohm', '150 Mohm').replace('18 degC', '20 degC'),
        motor.replace('voltage:', 'winding-insulation: thermoplastic\n    voltage:'),
      ),
    )
    const one = results.find(({ figure }) => figure.id === 'test/insulation-resistance')
    expect(one?.amount).toMatchObject({ value: 37.5e6, limit: { low: 5e6 } })
  })

  it('give the temperature of a winding from its cold resistance: 80 to 100 ohm is a rise of 64 K', () => {
    const phases = (ohms: number) => `resistances: U-V ${ohms} ohm, V-W ${ohms} ohm, W-U ${ohms} ohm`
    const { results } = resultsIn(
      job(
        record(
          `kind: phase-resistance  on: m  taken: 2026-03-01  ${phases(80)}  temperature: 20 degC`,
          'cold',
        ) + record(`kind: phase-resistance  on: m  taken: 2026-03-02  ${phases(100)}`, 'hot'),
      ),
    )
    const one = results.find(({ figure }) => figure.id === 'test/winding-temperature')
    expect(one?.block.name).toBe('hot')
    // 63.75 K with the constant 235 of IEC 60034-1; 63.63 K with 234.5.
    expect((one?.amount.value ?? 0) - 273.15).toBeCloseTo(83.75, 6)
  })

  it('are finite and nothing throws, of all that can be written', () => {
    const number = fc.oneof(
      fc.constantFrom('0', '1e-9', '1e9', '1e12', '-5', '?', '20', '180'),
      fc.double({ min: 0, max: 1000, noNaN: true }).map((n) => n.toFixed(3)),
    )
    const facts = fc.record({
      kind: fc.constantFrom(
        'insulation-resistance',
        'phase-resistance',
        'no-load-current',
        'precharge',
        'discharge',
        'rotation',
        'earth-leakage',
        'bonding',
        'sensor',
        'run-out',
      ),
      on: fc.constantFrom('m', 'm.s', 'm.n', 'm.p', 'controller', 'feed', 'house', 'nobody'),
      taken: fc.constantFrom('2026-03-01', '2026-13-01', '2030-01-01'),
      voltage: number.map((n) => `${n} V`),
      resistance: number.map((n) => `${n} ohm`),
      'resistance-10-min': number.map((n) => `${n} ohm`),
      temperature: number.map((n) => `${n} degC`),
      resistances: number.map((n) => `U-V ${n} ohm, V-W 3 ohm, W-U 3 ohm`),
      currents: number.map((n) => `U ${n} A, V 3 A`),
      'end-voltage': number.map((n) => `${n} V`),
      'run-out': number.map((n) => `${n} mm`),
      diameter: number.map((n) => `${n} mm`),
      where: fc.constantFrom('shaft', 'face'),
      permitted: fc.constantFrom('max 5 %', 'min 1 Mohm', 'max 0.05 mm', 'max 0 %', 'min 5 %'),
    })
    fc.assert(
      fc.property(facts, facts, (one, two) => {
        const write = (said: object) =>
          Object.entries(said)
            .map(([name, value]) => `    ${name}: ${value}\n`)
            .join('')
        const text = job(`  test t1 {\n${write(one)}  }\n  test t2 {\n${write(two)}  }\n`)
        for (const { amount } of resultsIn(text).results)
          expect(Number.isFinite(amount.value), text).toBe(true)
      }),
      { numRuns: 150 },
    )
  })
})

describe('a precharge that was timed', () => {
  // τ = 47 Ω · 6.8 mF = 0.3196 s: 95 V of 98 V after 1.11 s.
  const timed = (facts: string, precharge = 'resistance: 47 ohm', controller = 'capacitance: 6.8 mF') =>
    found(`job "x" { vessel: "y" }
battery house { nominal: 96 V  window: 84..108 V }
drive main {
${motor}  controller { ${controller} }
  contactor main-contactor { current: 250 A }
  precharge { around: main-contactor  ${precharge} }
${proof}${record(`kind: precharge  on: controller  taken: 2026-03-01  voltage: 98 V  ${facts}`)}}`)

  it('takes the time of its resistance and the capacitance, within 1.5 times', () => {
    expect(timed('end-voltage: 95 V  time: 1.11 s')).toEqual([])
    expect(timed('end-voltage: 95 V  time: 0.76 s')).toEqual([])
    expect(timed('end-voltage: 95 V  time: 0.5 s')).toEqual([
      'warning test/precharge-differs: The precharge took 0.5 s; by its resistance and the capacitance it takes 0.683 s to 1.86 s.',
    ])
    expect(timed('end-voltage: 95 V  time: 1.9 s')).toHaveLength(1)
  })

  it('through a contactor that has welded is there at once', () => {
    expect(timed('end-voltage: 98 V  time: 0.05 s')).toHaveLength(1)
    expect(timed('end-voltage: 98 V  time: 0.05 s', 'resistance: 47 ohm  closes-after: 2 s')).toHaveLength(1)
  })

  it('may go on until its switch closes, once all is charged', () => {
    expect(timed('end-voltage: 97.5 V  time: 2.3 s')).toEqual([])
    expect(timed('end-voltage: 97.5 V  time: 9 s')).toHaveLength(1)
    expect(timed('end-voltage: 97.5 V  time: 9 s', 'resistance: 47 ohm  closes-after: 8 s')).toEqual([])
  })

  it('cannot end above what the discharge resistance leaves', () => {
    const bled = (end: string) =>
      timed(
        `end-voltage: ${end}  time: 4 s`,
        'resistance: 470 ohm',
        'capacitance: 6.8 mF  discharge-resistance: 4.7 kohm',
      )
    // 10/11 of 98 V are 89.1 V.
    expect(bled('97 V')).toEqual([
      'warning test/precharge-differs: The precharge ended at 99 % of the voltage of the battery; with the discharge resistance it comes to 90.9 %.',
    ])
  })

  it('is history once it was done again', () => {
    const again =
      'kind: precharge  on: controller  taken: 2026-03-02  voltage: 98 V  end-voltage: 95 V  time: 1.1 s'
    expect(
      timed(`end-voltage: 95 V  time: 0.1 s }\n  test u { ${again}`).map((one) => one.split(' ', 1)[0]),
    ).toEqual(['information'])
  })

  it('with the capacitance of all controllers that it charges', () => {
    expect(
      timed(
        'end-voltage: 95 V  time: 2.2 s',
        'resistance: 47 ohm',
        'capacitance: 6.8 mF }\n  controller { capacitance: 6.8 mF',
      ),
    ).toEqual([])
  })
})
