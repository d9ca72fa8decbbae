// What goes wrong with a propeller, a motor and a battery: each has a finding, and nothing is silent or not finite. Figures are invented.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { isResult } from '../../../server/src/areas/common/result.ts'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf } from '../../checks/marks.ts'
import { resultsIn } from '../results-in.ts'
import { type BoatText, boat } from './boat.ts'

const areas = /^(propeller|motor|gear|battery|hull|service)\//
const found = (parts: BoatText): readonly string[] =>
  findingsOf(boat(parts), allChecks)
    .findings.filter(({ check }) => areas.test(check))
    .map(({ check, severity }) => `${severity} ${check}`)

const messageOf = (parts: BoatText, id: string): string | undefined => {
  const finding = findingsOf(boat(parts), allChecks).findings.find(({ check }) => check === id)
  return finding && `${finding.message} ${finding.detail ?? ''}`
}

const resultOf = (text: string, id: string) => {
  const result = resultsIn(text).results.find(({ figure }) => figure.id === id)
  return result?.amount
}

describe('a boat', () => {
  it('that is all right has no finding', () => {
    expect(found({})).toEqual([])
  })

  const curved = (curve: string): BoatText => ({
    motor: `power: 15 kW  speed: 1500 rpm  max-speed: 2600 rpm  efficiency: 92 %  torque-curve: ${curve}`,
  })

  it('whose torque curve begins above the speed of the motor has no finding: there it is not known', () => {
    const creep = 'reserve: 20 %  point creep { boat-speed: 4 kn  time: 1 h }'
    expect(
      found({ ...curved('1400 rpm 95 N·m, 1500 rpm 95 N·m, 2600 rpm 55 N·m'), service: creep }),
    ).not.toContain('error motor/torque-beyond')
  })

  it('whose torque curve ends below the speed of the motor has a warning that it is not known', () => {
    const parts = curved('0 rpm 95 N·m, 1600 rpm 90 N·m')
    expect(found(parts)).toContain('warning motor/torque-beyond')
    // Where the curve ends, it is not known that the propeller takes too little.
    expect(found(parts)).not.toContain('warning propeller/power-not-absorbed')
    expect(messageOf(parts, 'motor/torque-beyond')).toContain('its torque curve ends at 1600 rpm')
    expect(resultOf(boat(parts), 'point/motor-torque')).toMatchObject({ key: { drive: 'main' } })
    expect(resultOf(boat(parts), 'point/motor-torque')?.limit).toBeUndefined()
  })

  it.each<readonly [string, BoatText, string]>([
    [
      'a propeller too big for the motor',
      { propeller: 'diameter: 600 mm  pitch: 600 mm  blades: 4  blade-area-ratio: 60 %' },
      'warning propeller/too-large',
    ],
    [
      'a propeller too small',
      { propeller: 'diameter: 360 mm  pitch: 240 mm  blades: 3  blade-area-ratio: 55 %' },
      'warning propeller/power-not-absorbed',
    ],
    [
      'one too small turns too fast at cruise',
      { propeller: 'diameter: 300 mm  pitch: 200 mm  blades: 3  blade-area-ratio: 55 %' },
      'error motor/speed-beyond',
    ],
    [
      'points that end below the speed',
      { hull: 'calm-water-resistance: 3 kn 0.2 kN, 5 kn 0.62 kN' },
      'warning hull/speed-beyond-points',
    ],
    [
      'points that begin above the speed',
      { hull: 'calm-water-resistance: 6 kn 1 kN, 7 kn 2.2 kN' },
      'warning hull/speed-beyond-points',
    ],
    [
      'a rule that ends below the speed',
      { hull: 'displacement: 5 t  waterline-length: 3 m' },
      'warning hull/speed-beyond-points',
    ],
    ['an inverted gear', { gear: 'ratio: 0.4' }, 'warning propeller/too-large'],
    ['an inverted gear at cruise', { gear: 'ratio: 0.4' }, 'error motor/torque-beyond'],
    [
      'a pitch of next to nothing',
      { propeller: 'diameter: 460 mm  pitch: 10 mm  blades: 3' },
      'warning propeller/outside-series',
    ],
    [
      'a pitch of next to nothing: no table',
      { propeller: 'diameter: 460 mm  pitch: 10 mm  blades: 3' },
      'information hull/power-unknown',
    ],
    [
      'nine blades',
      { propeller: 'diameter: 460 mm  pitch: 340 mm  blades: 9' },
      'warning propeller/outside-series',
    ],
    [
      'a service longer than the battery lasts',
      { service: 'reserve: 20 %  point cruise { boat-speed: 5.5 kn  time: 20 h }' },
      'error battery/endurance-short',
    ],
    [
      'a range never reached',
      { service: 'reserve: 20 %  range: min 100 nmi  point cruise { boat-speed: 5.5 kn  time: 1 h }' },
      'error battery/range-short',
    ],
    ['a service without points', { service: 'reserve: 20 %' }, 'information service/energy-unknown'],
    [
      'a point without its time',
      { service: 'reserve: 20 %  point cruise { boat-speed: 5.5 kn }' },
      'information service/energy-unknown',
    ],
    ['no battery', { battery: '' }, 'information service/energy-unknown'],
    [
      'a battery that does not fit the controller',
      { battery: 'nominal: 24 V  capacity: 210 Ah' },
      'information service/energy-unknown',
    ],
    [
      'a battery of unlike voltage beside it',
      { more: 'battery domestic { nominal: 24 V  capacity: 100 Ah }' },
      'information service/energy-unknown',
    ],
    [
      'a battery that permits less',
      {
        battery:
          'nominal: 96 V  window: 84..108 V  capacity: 210 Ah  chemistry: lfp  usable: 80 %  current: 100 A',
      },
      'error battery/current-beyond',
    ],
    [
      'a twin with one propeller',
      { more: 'drive other { motor turning { power: 15 kW  speed: 1500 rpm } }' },
      'information hull/power-unknown',
    ],
    [
      'two motors',
      { more: '', motor: 'power: 15 kW  speed: 1500 rpm }\n motor second { power: 1 kW' },
      'information hull/power-unknown',
    ],
    [
      'a wetted area alone',
      { hull: 'displacement: 5.6 t  waterline-length: 9.2 m  wetted-area: 24 m2' },
      'warning hull/friction-alone',
    ],
    ['drives too weak', { motor: 'power: 50 W  speed: 1500 rpm' }, 'error hull/drives-too-weak'],
    [
      'too little blade',
      { propeller: 'diameter: 460 mm  pitch: 340 mm  blades: 3  blade-area-ratio: 35 %  depth: 0.3 m' },
      'warning propeller/cavitation',
    ],
    ['a gear too weak', { gear: 'ratio: 2.5  rated-torque: 60 N·m' }, 'error gear/torque-beyond'],
    ['a gear too slow', { gear: 'ratio: 2.5  max-speed: 2000 rpm' }, 'error gear/speed-beyond'],
  ])('with %s', (_, parts, expected) => {
    expect(found(parts)).toContain(expected)
  })

  it('with another motor speed than stated is only warned of what is assumed', () => {
    const motor = 'power: 15 kW  speed: 1500 rpm'
    expect(found({ motor })).toContain('warning motor/speed-beyond')
  })

  it('with a rough estimate is only warned of its range', () => {
    const hull = 'displacement: 5.6 t  waterline-length: 9.2 m'
    const service = 'reserve: 20 %  range: min 500 nmi  point cruise { boat-speed: 5.5 kn  time: 90 h }'
    expect(found({ hull, service })).toEqual(
      expect.arrayContaining(['warning battery/range-short', 'warning battery/endurance-short']),
    )
  })

  it('names the drive that says too little', () => {
    const more = 'drive other { propeller { diameter: 460 mm  pitch: 340 mm } }'
    expect(messageOf({ more }, 'hull/power-unknown')).toContain('the propeller of other')
  })

  it('says how long the peak lasts', () => {
    const motor = 'power: 5 kW  speed: 1500 rpm  max-speed: 2600 rpm  peak-torque: 60 N·m  peak-time: 60 s'
    const service = 'reserve: 20 %  point sprint { boat-speed: 6 kn  time: 1 min }'
    expect(messageOf({ motor, service }, 'motor/torque-beyond')).toContain('60 s only')
  })
})

describe('the figures of a boat', () => {
  it('share one bank between two drives', () => {
    const drive = boat().slice(boat().indexOf('drive main')).replace('drive main', 'drive other')
    const [one, two] = [boat(), boat({ more: drive })].map(
      (text) => resultOf(text, 'battery/drive-current')?.value,
    )
    expect((two ?? 0) / (one ?? 1)).toBeCloseTo(2, 1)
  })

  it('count what linked batteries have', () => {
    const more = `battery second { nominal: 96 V  window: 84..108 V  capacity: 210 Ah  chemistry: lfp  usable: 80 % }
cable link { from: house  to: second }
cable feed { from: house  to: main.controller }`
    const [one, two] = [boat(), boat({ more })].map((text) => resultOf(text, 'point/endurance')?.value)
    expect((two ?? 0) / (one ?? 1)).toBeCloseTo(2, 6)
  })

  it('are the same in other units and in another order', () => {
    const inch = boat({
      propeller: 'diameter: 0.46 m  pitch: 34 cm  blades: 3  blade-area-ratio: 0.55  depth: 500 mm',
    })
    expect(resultOf(inch, 'hull/top-speed')?.value).toBeCloseTo(
      resultOf(boat(), 'hull/top-speed')?.value ?? 0,
      9,
    )
    const lines = boat().split('\n')
    const turned = [...lines.slice(3), ...lines.slice(0, 3)].join('\n')
    expect(resultOf(turned, 'hull/top-speed')?.value).toBeCloseTo(
      resultOf(boat(), 'hull/top-speed')?.value ?? 0,
      9,
    )
  })

  it('go with the water, the margin, the reserve and the controller', () => {
    const value = (parts: BoatText, id: string) => resultOf(boat(parts), id)?.value ?? Number.NaN
    const service = (words: string) => ({
      service: `${words}  point cruise { boat-speed: 5.5 kn  time: 1 h }`,
    })
    expect(value(service('reserve: 40 %'), 'point/range')).toBeLessThan(
      value(service('reserve: 20 %'), 'point/range'),
    )
    expect(value(service('sea-margin: 50 %'), 'hull/top-speed')).toBeLessThan(value({}, 'hull/top-speed'))
    expect(value(service('water: fresh'), 'propeller/bollard-thrust')).not.toBe(
      value({}, 'propeller/bollard-thrust'),
    )
    const motor =
      'power: 15 kW  speed: 1500 rpm  max-speed: 2600 rpm  efficiency: 92 %  voltage: 58 V  power-factor: 0.9'
    const weak = { motor, controller: 'input: 72..120 V  efficiency: 96 %  current: 90 A' }
    // By hand: 15 kW / (√3 * 58 V * 0.9 * 0.92) = 180.3 A, so half of the torque.
    expect(value(weak, 'hull/top-speed')).toBeLessThan(value({ motor }, 'hull/top-speed'))
  })

  const odd = fc.constantFrom(
    '0',
    '-1',
    '1e9',
    '1e-9',
    '0.5',
    '1',
    '?',
    '""',
    'x',
    '5 kn',
    '0 mm',
    '-3 m',
    '1e30 kg',
  )
  const facts = [
    ['hull', 'displacement'],
    ['hull', 'calm-water-resistance'],
    ['hull', 'wake-fraction'],
    ['hull', 'thrust-deduction'],
    ['service', 'reserve'],
    ['service', 'sea-margin'],
    ['service', 'water-temperature'],
    ['battery', 'capacity'],
    ['battery', 'window'],
    ['battery', 'usable'],
    ['battery', 'peukert-exponent'],
    ['propeller', 'pitch'],
    ['propeller', 'blades'],
    ['gear', 'ratio'],
    ['motor', 'torque-curve'],
    ['motor', 'max-speed'],
    ['controller', 'current'],
  ] as const

  it('are finite or not there, whatever one fact says', () => {
    fc.assert(
      fc.property(fc.constantFrom(...facts), odd, ([part, fact], value) => {
        const { results, findings } = resultsIn(boat({ [part]: `${fact}: ${value}` }))
        expect(findings.filter(({ check }) => check === 'job/check-crashed')).toEqual([])
        for (const one of results) if (isResult(one)) expect(Number.isFinite(one.amount.value)).toBe(true)
      }),
      { numRuns: 150 },
    )
  })

  const numbers = fc.record({
    diameter: fc.double({ min: 50, max: 5000, noNaN: true }),
    pitch: fc.double({ min: 10, max: 5000, noNaN: true }),
    ratio: fc.double({ min: 0.02, max: 90, noNaN: true }),
    power: fc.double({ min: 0.01, max: 5000, noNaN: true }),
    speed: fc.double({ min: 2, max: 40000, noNaN: true }),
    capacity: fc.double({ min: 1, max: 90000, noNaN: true }),
    knots: fc.double({ min: 0.11, max: 90, noNaN: true }),
    displacement: fc.double({ min: 0.02, max: 90000, noNaN: true }),
    length: fc.double({ min: 1.1, max: 290, noNaN: true }),
  })

  it('are finite or not there in a boat of any size', () => {
    fc.assert(
      fc.property(numbers, (n) => {
        const { results, findings } = resultsIn(
          boat({
            hull: `displacement: ${n.displacement} t  waterline-length: ${n.length} m`,
            service: `point cruise { boat-speed: ${n.knots} kn  time: 1 h }`,
            propeller: `diameter: ${n.diameter} mm  pitch: ${n.pitch} mm  blades: 3  depth: 1 m  blade-area-ratio: 50 %`,
            gear: `ratio: ${n.ratio}`,
            motor: `power: ${n.power} kW  speed: ${n.speed} rpm`,
            battery: `nominal: 96 V  capacity: ${n.capacity} Ah`,
          }),
        )
        expect(findings.filter(({ check }) => check === 'job/check-crashed')).toEqual([])
        for (const one of results) if (isResult(one)) expect(Number.isFinite(one.amount.value)).toBe(true)
      }),
      { numRuns: 150 },
    )
  })
})
