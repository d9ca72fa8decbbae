// Which of several figures counts: the weaker battery, the end of a curve, the speed at which a propeller pushes hardest. Figures are invented.
import { describe, expect, it } from 'vitest'
import { isResult, resultsOf } from '../../../server/src/areas/common/result.ts'
import { allChecks } from '../../../server/src/areas/index.ts'
import { hullFigures } from '../../../server/src/areas/propulsion/figures/hull.ts'
import { lookupFrom } from '../../../server/src/store/store.ts'
import { findingsOf } from '../../checks/marks.ts'
import { resultsIn } from '../results-in.ts'
import { type BoatText, boat } from './boat.ts'

const amountOf = (text: string, id: string) =>
  resultsIn(text).results.find(({ figure }) => figure.id === id)?.amount

const findingOf = (text: string, id: string) =>
  findingsOf(text, allChecks).findings.find(({ check }) => check === id)

describe('of batteries in series', () => {
  const joined = (first: string, second: string): string =>
    boat({
      controller: 'input: 72..120 V  efficiency: 96 %',
      battery: `nominal: 48 V  capacity: 210 Ah  ${first}`,
      more: `battery second { nominal: 48 V  capacity: 210 Ah  ${second} }
cable joint { from: house  to: second  pole: series  conductor: 50 mm2  length: 0.3 m  insulation: 105 degC }
cable feed { from: second  to: main.controller  conductor: 50 mm2  length: 1 m  insulation: 105 degC }
`,
    })
  const endurance = (first: string, second: string): number =>
    amountOf(joined(first, second), 'hull/endurance')?.value ?? Number.NaN

  // Energy balance: the same current flows through both, so the one that may give less is done first.
  it('the one of which less may be used counts', () => {
    const alike = endurance('chemistry: lfp  usable: 80 %', 'chemistry: lfp  usable: 80 %')
    expect(alike).toBeGreaterThan(0)
    expect(endurance('chemistry: lfp  usable: 80 %', 'chemistry: lfp  usable: 40 %') / alike).toBeCloseTo(
      0.5,
      9,
    )
    expect(endurance('chemistry: lfp  usable: 40 %', 'chemistry: lfp  usable: 80 %') / alike).toBeCloseTo(
      0.5,
      9,
    )
  })

  // Peukert 1897: an exponent above 1 takes time off wherever the current is above that of the hour rate.
  it('the larger exponent counts, wherever it is', () => {
    const [plain, lead] = [
      'chemistry: lfp  usable: 50 %',
      'chemistry: agm  usable: 50 %  peukert-exponent: 1.3  hour-rate: 20 h',
    ]
    const both = endurance(lead, lead)
    expect(endurance(plain, lead)).toBeCloseTo(both, 6)
    expect(endurance(lead, plain)).toBeCloseTo(both, 6)
    expect(both).toBeLessThan(0.9 * endurance(plain, plain))
    const mild = lead.replace('1.3', '1.1')
    expect(endurance(mild, lead)).toBeCloseTo(both, 6)
    expect(endurance(lead, mild)).toBeCloseTo(both, 6)
    expect(endurance(mild, mild)).toBeGreaterThan(both)
  })
})

it('a bank whose chemistry is stated as lead is no rough guess: that it does not last is an error', () => {
  const service = 'reserve: 20 %  point cruise { boat-speed: 5.5 kn  time: 20 h }'
  const severity = (battery: string) =>
    findingOf(boat({ battery, service }), 'battery/endurance-short')?.severity
  expect(severity('nominal: 96 V  window: 84..108 V  capacity: 210 Ah  chemistry: agm')).toBe('error')
  expect(severity('nominal: 96 V  window: 84..108 V  capacity: 210 Ah')).toBe('warning')
})

// Peukert 1897 in the form for a stated hour rate: t = H (C / (I H))^k; 20 h and 1.2 are common practice.
it('a lead bank of which no more is stated has an hour rate of 20 h and an exponent of 1.2, and says so', () => {
  const battery = 'nominal: 96 V  window: 84..108 V  capacity: 210 Ah  chemistry: agm'
  const text = boat({ battery })
  const [power, time] = ['point/battery-power', 'point/endurance'].map(
    (id) => amountOf(text, id)?.value ?? Number.NaN,
  )
  const empty = 20 * (210 / (((power ?? 0) / 96) * 20)) ** 1.2
  expect((time ?? 0) / 3600).toBeCloseTo(empty * 0.5 * 0.8, 9)
  expect(amountOf(text, 'point/endurance')?.assumptions).toEqual(
    expect.arrayContaining(['Peukert exponent of house is 1.2', 'the capacity of house is stated for 20 h']),
  )
})

describe('of the currents of a battery', () => {
  const stated = 'nominal: 96 V  window: 84..108 V  capacity: 210 Ah  chemistry: lfp  usable: 80 %'

  it('the C-rate is the current to the capacity, and a limit is only there where it is stated', () => {
    const current = amountOf(boat(), 'battery/drive-current')
    expect(current?.limit).toBeUndefined()
    expect(amountOf(boat(), 'battery/c-rate')?.value).toBeCloseTo((current?.value ?? 0) / 210, 9)
    const limited = amountOf(boat({ battery: `${stated}  current: 250 A` }), 'battery/drive-current')
    expect(limited?.limit).toEqual({ high: 250 })
  })

  it('nothing is said of one that feeds no propeller that is known', () => {
    const text = boat({ battery: `${stated}  current: 1 A`, propeller: '' })
    expect(findingOf(text, 'battery/current-beyond')).toBeUndefined()
    expect(findingOf(boat({ battery: `${stated}  current: 1 A` }), 'battery/current-beyond')).toBeDefined()
  })
})

describe('at bollard', () => {
  // The motor gives its rated 15 kW at 1500 rpm, or its rated torque below that.
  it('the motor is held by its torque, its speed or the end of its curve, and its power is torque times speed', () => {
    const from = (parts: BoatText) => amountOf(boat(parts), 'propeller/bollard-thrust')?.from
    expect(from({})).toBe('held by the torque of the motor')
    const small = 'diameter: 200 mm  pitch: 120 mm  blades: 3  blade-area-ratio: 55 %'
    expect(from({ propeller: small })).toBe('held by the highest speed of the motor')
    const motor =
      'power: 15 kW  speed: 1500 rpm  max-speed: 2600 rpm  torque-curve: 0 rpm 95 N·m, 1500 rpm 95 N·m'
    expect(from({ propeller: small, motor })).toBe('held by the end of the torque curve of the motor')
    const [power, speed] = ['propeller/bollard-power', 'propeller/bollard-speed'].map(
      (id) => amountOf(boat(), id)?.value ?? 0,
    )
    const motorSpeed = (speed ?? 0) * 2.5
    const rated = (1500 * Math.PI) / 30
    expect(power).toBeCloseTo(15e3 * Math.min(1, motorSpeed / rated), 3)
  })
})

it('where the resistance ends before the top speed, nothing is said of the propeller there', () => {
  // At 5 kn the motor would be at its highest speed, far below its power.
  const hull =
    'calm-water-resistance: 4 kn 0.38 kN, 5 kn 0.62 kN  wake-fraction: 15 %  thrust-deduction: 12 %'
  const propeller = 'diameter: 360 mm  pitch: 240 mm  blades: 3  blade-area-ratio: 55 %'
  const service = 'reserve: 20 %  sea-margin: 10 %'
  expect(amountOf(boat({ hull, propeller, service }), 'hull/top-speed')?.bound).toBe('at-least')
  expect(findingOf(boat({ hull, propeller, service }), 'propeller/power-not-absorbed')).toBeUndefined()
  expect(findingOf(boat({ propeller, service }), 'propeller/power-not-absorbed')).toBeDefined()
})

it('the range is the endurance times the speed', () => {
  const all = resultsIn(boat()).results
  const series = (id: string) => all.filter(({ figure }) => figure.id === id).map(({ amount }) => amount)
  const [times, ranges] = [series('hull/endurance'), series('hull/range')]
  expect(times.length).toBeGreaterThan(3)
  expect(ranges.map(({ value }) => value)).toEqual(
    times.map(({ value, at = 0 }) => expect.closeTo(value * at, 6)),
  )
})

describe('of a motor without a highest speed', () => {
  const motor = (curve: string): BoatText => ({
    motor: `power: 15 kW  speed: 1500 rpm  efficiency: 92 %  ${curve}`,
  })

  it('the end of its curve counts, else its rated speed', () => {
    const curved = amountOf(
      boat(motor('torque-curve: 0 rpm 95 N·m, 1500 rpm 95 N·m, 2600 rpm 55 N·m')),
      'point/motor-speed',
    )
    expect(curved?.limit?.high).toBeCloseTo((2600 * Math.PI) / 30, 6)
    expect(curved?.assumptions).toContain('highest speed of the motor is 2600 rpm: `max-speed` is not stated')
    expect(amountOf(boat(motor('')), 'point/motor-speed')?.limit?.high).toBeCloseTo((1500 * Math.PI) / 30, 6)
  })
})

it('a fact that is marked as assumed is named by what follows from it', () => {
  const propeller =
    'diameter: 460 mm [assumed]  pitch: 340 mm  blades: 3  blade-area-ratio: 55 %  depth: 0.5 m'
  const of = (text: string) =>
    (amountOf(text, 'point/slip')?.assumptions ?? []).filter((words) => words.includes('diameter'))
  expect(of(boat({ propeller }))).toHaveLength(1)
  expect(of(boat())).toEqual([])
})

// Keller asks for area in proportion to the thrust.
it('the blade area is held against the speed at which the propeller pushes hardest, also beyond the top speed', () => {
  const amount = (service: string) => amountOf(boat({ service }), 'propeller/blade-area')
  const [top, sprint] = [
    'reserve: 20 %  sea-margin: 10 %',
    'reserve: 20 %  sea-margin: 10 %  point slow { boat-speed: 4 kn  time: 1 h }  point sprint { boat-speed: 8 kn  time: 1 h }',
  ].map(amount)
  expect(sprint?.from).toContain('at 8 kn')
  // T (1 − t) = 5 kN · 1.1.
  expect(sprint?.from).toContain('6250 N')
  expect(sprint?.limit?.low).toBeGreaterThan((top?.limit?.low ?? 0) * 1.2)
})

it('a hull by friction and waves has the sum of both, with the form factor', () => {
  const hull = (k: string) =>
    `waterline-length: 9.2 m  wetted-area: 24 m2  ${k}  wave-resistance: 4 kn 0.1 kN, 5 kn 0.25 kN, 6 kn 0.6 kN, 7 kn 1.7 kN, 8 kn 4 kN`
  const at5 = (k: string) =>
    resultsIn(boat({ hull: hull(k), service: 'water: sea  water-temperature: 15 degC' })).results.find(
      ({ figure, amount }) =>
        figure.id === 'hull/resistance' && Math.abs((amount.at ?? 0) - 5 * (1852 / 3600)) < 1e-6,
    )?.amount
  // ITTC 1957, sea water of 15 °C (1025.9 kg/m³, 1.1883e-6 m²/s): Re = 2.5722 · 9.2 / 1.1883e-6 = 1.9914e7, CF = 0.075 / (lg Re − 2)² = 0.0026708;
  // ½ · 1025.9 · 24 · 2.5722² · CF = 217.5 N.
  expect(at5('form-factor: 0')?.value).toBeCloseTo(250 + 217.5, 0)
  expect(at5('form-factor: 0.4')?.value).toBeCloseTo(250 + 1.4 * 217.5, 0)
  expect(at5('')?.value).toBeCloseTo(250 + 1.2 * 217.5, 0)
  expect(at5('')?.assumptions).toContain('form factor k is 0.2')
  expect(at5('form-factor: 0.4')?.assumptions?.join()).not.toContain('form factor')
})

describe('a finding says', () => {
  it('what a part takes where its peak torque is not stated', () => {
    const motor = 'power: 15 kW  speed: 1500 rpm  max-speed: 2600 rpm  peak-torque: 150 N·m  peak-time: 30 s'
    const of = (gear: string) => findingOf(boat({ motor, gear }), 'gear/peak-torque-beyond')?.detail
    expect(of('ratio: 2.5  rated-torque: 120 N·m')).toContain('its peak torque is not stated')
    expect(of('ratio: 2.5  rated-torque: 120 N·m  peak-torque: 140 N·m')).toBeUndefined()
  })

  it('what the motor must give, and can', () => {
    const motor = 'power: 5 kW  speed: 1500 rpm  max-speed: 2600 rpm'
    const service = 'reserve: 20 %  sea-margin: 10 %  point sprint { boat-speed: 6 kn  time: 1 min }'
    const found = findingOf(boat({ motor, service }), 'motor/torque-beyond')
    expect(found?.message).toMatch(
      /^At 6 kn the motor of main must give [\d.]+ N·m .*, but can give [\d.]+ N·m/,
    )
    // 5 kW at more than 1500 rpm: less than 31.8 N·m.
    expect(Number.parseFloat(found?.limit?.replace('at most ', '') ?? '')).toBeLessThan(31.8)
    expect(Number.parseFloat(found?.found ?? '')).toBeGreaterThan(31.8)
  })

  it('of which hull the resistance ends', () => {
    const found = findingOf(
      boat({ hull: 'calm-water-resistance: 3 kn 0.2 kN, 5 kn 0.62 kN' }),
      'hull/speed-beyond-points',
    )
    expect(found?.related?.map(({ message }) => message)).toEqual(['the hull'])
  })
})

it('a battery of which no motor and no point says what it gives has no current', () => {
  const text = boat({ motor: '', service: 'reserve: 20 %' })
  expect(amountOf(text, 'battery/drive-current')).toBeUndefined()
})

it('a boat whose motor is not known has no top speed, and the reason is the motor', () => {
  const { file, analysis } = resultsIn(boat({ motor: '' }))
  const [hull] = analysis.blocks(file).filter(({ kind }) => kind === 'hull')
  if (!hull) throw new Error('no hull')
  const all = resultsOf(hullFigures, lookupFrom(hull, { analysis, file }), { file, findings: () => [] })
  expect(all.flatMap((one) => (isResult(one) ? [] : [one.fault]))).toEqual([
    'The motor of main is not stated.',
  ])
})
