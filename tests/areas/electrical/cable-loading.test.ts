import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { sectionOf } from '../../../server/src/areas/electrical/plans/cable-ampacity.ts'
import { systemOf } from '../../../server/src/areas/electrical/plans/cable-circuit.ts'
import { cableLoading } from '../../../server/src/areas/electrical/plans/cable-loading.ts'
import { isProtected, ratingOf } from '../../../server/src/areas/electrical/plans/cable-protection.ts'
import { phaseFaults } from '../../../server/src/areas/electrical/plans/phase-faults.ts'
import { blockIn } from '../job-text.ts'
import { loopAt105, withDrop } from './with-drop.ts'

interface Wanted {
  readonly battery?: string
  readonly motor?: string
  readonly controller?: string
  readonly cable?: string
  readonly ends?: string
  readonly rest?: string
}

const jobOf = (w: Wanted = {}): string => `battery house {
  ${w.battery ?? 'nominal: 96 V\n  window: 84..108 V'}
}
drive main {
  motor turning {
    ${w.motor ?? 'power: 15 kW\n    efficiency: 92 %\n    voltage: 58 V\n    power-factor: 0.9'}
  }
  controller { ${w.controller ?? 'efficiency: 96 %'} }
  cable feed {
    ${w.ends ?? 'from: house\n    to: controller'}
    ${w.cable ?? 'conductor: 95 mm2\n    length: 2.5 m\n    insulation: 105 degC'}
  }
  ${w.rest ?? ''}
}
`

const loading = (w: Wanted = {}) => {
  const { block, lookup } = blockIn(jobOf(w), 'main.feed')
  const outcome = cableLoading(block, lookup)
  return outcome.ok ? outcome.value : undefined
}

const phases = 'from: controller\n    to: turning'
const boatCable = (gauge: string, place: string, bundled: number, more = '') =>
  `conductor: ${gauge} AWG\n    length: 2 m\n    insulation: 105 degC\n    place: ${place}\n    bundled: ${bundled}\n    design-current: 180 A\n    ${more}`

describe('ampacity, from the text of a job', () => {
  // 33 CFR 183.425 Table 5 (105 °C column) with notes 1 (0.85) and 2 (three bundled: 0.7; four to six: 0.6). The UL 1426 boat-cable table
  // prints the products: 264.8 A for 4/0 in the engine space with three bundled; for 2/0 280.5 A alone, 196.4 A and 168.3 A bundled.
  it.each([
    ['4/0', 'machinery-space', 3, 264.775],
    ['4/0', 'open', 1, 445],
    ['2/0', 'machinery-space', 1, 280.5],
    ['2/0', 'machinery-space', 2, 280.5],
    ['2/0', 'machinery-space', 4, 168.3],
    ['2/0', 'machinery-space', 3, 196.35],
  ])(
    '%s AWG, %s, %i bundled: %f A (33 CFR 183.425 Table 5, notes 1 and 2; UL 1426 boat-cable table)',
    (gauge, place, n, amps) => {
      expect(loading({ cable: boatCable(gauge, place, n) })?.carries).toBeCloseTo(amps, 6)
    },
  )

  it('takes three conductors for three phases, two for a DC pair, times those in parallel (33 CFR 183.425 note 2 counts conductors that carry current)', () => {
    const bare = 'conductor: 4/0 AWG\n    length: 2 m\n    insulation: 105 degC'
    expect(loading({ cable: bare })?.bundled).toBe(2)
    expect(loading({ cable: bare })?.carries).toBeCloseTo(445 * 0.85, 6)
    expect(loading({ cable: bare, ends: phases })?.bundled).toBe(3)
    expect(loading({ cable: bare, ends: phases })?.carries).toBeCloseTo(264.775, 6)
    const two = loading({ cable: `${bare}\n    parallel: 2` })
    expect(two?.bundled).toBe(4)
    expect(two?.carries).toBeCloseTo(2 * 445 * 0.85 * 0.6, 6)
  })

  it('uses the largest row above the tables (ISO 13297 Table A.1 ends at 150 mm²: 475 A at 105 °C, from memory; 0.85 by 33 CFR note 1)', () => {
    const beyond = loading({ cable: 'conductor: 240 mm2\n    length: 2 m\n    insulation: 105 degC' })
    expect(beyond?.ampacity.tables).toBe('above')
    expect(beyond?.carries).toBeCloseTo(475 * 0.85, 9)
  })
})

describe('conductor as written', () => {
  // ASTM B258: 4/0 is 0.460 in across, 107.219 mm²; 36 AWG is 0.005 in.
  it('is a gauge when its area is one (ASTM B258)', () => {
    expect(sectionOf((Math.PI / 4) * (0.46 * 0.0254) ** 2)).toEqual({ system: 'awg', n: -3 })
    expect(sectionOf((Math.PI / 4) * (0.005 * 0.0254) ** 2)).toEqual({ system: 'awg', n: 36 })
  })
  it('is metric otherwise: 107 mm² is not 4/0 (ASTM B258)', () => {
    expect(sectionOf(107e-6).system).toBe('metric')
    expect(sectionOf(35e-6)).toMatchObject({ system: 'metric' })
  })
})

describe('design current', () => {
  // Published battery-inverter wiring example: 1200 W, inverter 0.85, 10.5 V cut-off, × 1.25 → 168 A.
  it('1200 W through an inverter of 85 % at 10.5 V asks for a fuse of 168 A (published wiring example)', () => {
    const text = jobOf({
      battery: 'nominal: 12 V\n  window: 10.5..14.4 V',
      motor: 'power: 1200 W\n    efficiency: 100 %',
      controller: 'efficiency: 85 %',
      // The example counts no drop.
      cable: 'conductor: 2/0 AWG\n    length: 0.01 m\n    insulation: 105 degC',
    })
    const { block, lookup } = blockIn(text, 'main.feed')
    expect(ratingOf(175, block, lookup)?.window.low).toBeCloseTo(168.07, 1)
    expect(ratingOf(175, block, lookup)?.verdict).toBe('within')
    expect(ratingOf(160, block, lookup)?.verdict).toBe('below-load')
  })

  // Bird, Electrical Circuit Theory and Technology, Problem 19.11: 12.75 kW, 415 V, power factor 0.77, efficiency 0.85 → 27.10 A.
  it('12.75 kW at 415 V, power factor 0.77, efficiency 85 %, takes 27.10 A a line (Bird, Problem 19.11)', () => {
    const motor = 'power: 12.75 kW\n    voltage: 415 V\n    power-factor: 0.77\n    efficiency: 85 %'
    const battery = 'nominal: 700 V\n    window: 650..750 V' // 650 V / √2 is above 415 V
    expect(loading({ motor, battery, ends: phases })?.current).toBeCloseTo(27.1014, 3)
  })

  // Space-vector modulation makes V / √2 between lines at most (index 2/√3 at V/2 phase peak): 59.397 V from 84 V.
  it('a motor without a voltage gets the most its controller makes of the lowest battery voltage (space-vector modulation: V / √2)', () => {
    const load = loading({ motor: 'power: 15 kW\n    power-factor: 0.9\n    efficiency: 92 %', ends: phases })
    expect(load?.volts).toBeCloseTo(59.397, 3)
    expect(load?.current).toBeCloseTo(15000 / (Math.sqrt(3) * 59.39697 * 0.9 * 0.92), 3)
    expect(load?.assumptions.join('; ')).toContain('highest voltage')
  })

  it('says so when the battery, low, cannot give the motor its rated voltage (V / √2 of 84 V is 59.4 V)', () => {
    const motor = (volts: number) => `power: 15 kW\n    voltage: ${volts} V`
    expect(loading({ motor: motor(60), ends: phases })?.assumptions.join('; ')).toContain('at most 59.4 V')
    expect(loading({ motor: motor(58), ends: phases })?.assumptions.join('; ')).not.toContain('at most')
  })

  it('is shared by conductors in parallel (Kirchhoff)', () => {
    const two = loading({ cable: boatCable('2/0', 'open', 1, 'parallel: 2') })
    expect(two).toMatchObject({ current: 180, perConductor: 90, carries: 660 })
  })

  it('is what the motor draws where the cable, alone, states less than 80 % of it (common practice, no source)', () => {
    const stated = (amps: number) =>
      loading({ cable: `conductor: 95 mm2\n length: 2 m\n insulation: 105 degC\n design-current: ${amps} A` })
    const load = withDrop(15000 / (0.92 * 0.96), 84, 2 * loopAt105(0.21)) // definition of efficiency; 95 mm²
    expect(stated(161)?.current).toBeCloseTo(load, 6)
    expect(stated(163)?.current).toBe(163)
  })

  it('takes what the cable states before what the motor would draw', () => {
    expect(loading({ cable: boatCable('2/0', 'open', 1) })?.current).toBe(180)
  })

  it('says each figure it had to assume, with its value', () => {
    const silent = loading({ motor: 'power: 15 kW', controller: '', battery: 'nominal: 96 V' })
    const said = silent?.assumptions.join('; ')
    for (const words of ['motor is 0.9', 'controller is 0.95', 'nominal 96 V', 'place'])
      expect(said).toContain(words)
    // Definition of efficiency; 95 mm².
    expect(silent?.current).toBeCloseTo(withDrop(15000 / (0.9 * 0.95), 96, 2.5 * loopAt105(0.21)), 6)
  })
})

describe('voltage drop', () => {
  // IEC 60228:2004 class 5 tinned 35 mm²: 0.565 Ω/km at 20 °C. IEC 60028: 0.00393 /K.
  const at105 = 0.565e-3 * (1 + 0.00393 * 85)
  const metric = 'conductor: 35 mm2\n    length: 3 m\n    insulation: 105 degC\n    design-current: 180 A'

  it('DC: out and back at the temperature the insulation allows (IEC 60228, IEC 60028)', () => {
    const load = loading({ cable: metric })
    expect(load?.dropVolts).toBeCloseTo(180 * 2 * 3 * at105, 9)
    expect(load?.drop).toBeCloseTo((180 * 2 * 3 * at105) / 84, 9)
    expect(load?.dropLimit).toBe(0.03)
  })

  it('three-phase: √3 I l (R cos φ + X sin φ) (IEC 60364-5-52 Annex G; X by UTE C 15-105)', () => {
    const expected = Math.sqrt(3) * 180 * 3 * (at105 * 0.9 + 0.08e-3 * Math.sqrt(1 - 0.81))
    const load = loading({ cable: metric, ends: phases })
    expect(load?.dropVolts).toBeCloseTo(expected, 9)
    expect(load?.drop).toBeCloseTo(expected / 58, 9)
    expect(load?.assumptions.join()).toContain('reactance')
  })

  it('halves with two conductors in parallel (Ohm)', () => {
    const one = loading({ cable: metric })?.dropVolts ?? 0
    expect(loading({ cable: `${metric}\n    parallel: 2` })?.dropVolts).toBeCloseTo(one / 2, 9)
  })

  it('holds to the limit of the file', () => {
    const load = loading({ cable: `${metric}\n    drop: max 5 %` })
    expect(load).toMatchObject({ dropLimit: 0.05, dropLimitFrom: 'the job file' })
  })
})

describe('what is written but cannot be read', () => {
  it.each([
    ['parallel', { cable: `${boatCable('2/0', 'open', 1)}\n    parallel: 2 kg` }],
    ['bundled', { cable: 'conductor: 95 mm2\n length: 2 m\n insulation: 105 degC\n bundled: 3 kg' }],
    ['place', { cable: 'conductor: 95 mm2\n length: 2 m\n insulation: 105 degC\n place: attic' }],
    ['current', { cable: 'conductor: 95 mm2\n length: 2 m\n insulation: 105 degC\n design-current: 90 kg' }],
    ['window', { battery: 'nominal: 96 V\n  window: 84..108 mm' }],
    ['motor efficiency', { motor: 'power: 15 kW\n    efficiency: 92 kg' }],
    ['controller efficiency', { controller: 'efficiency: 96 kg' }],
    ['conductor', { cable: 'conductor: 95 kg\n length: 2 m\n insulation: 105 degC' }],
  ] as const)('%s: no usual figure stands in for it', (_what, wanted) => {
    expect(loading(wanted)).toBeUndefined()
  })

  it('an allowed drop that cannot be read leaves the drop unjudged and the ampacity known', () => {
    const load = loading({ cable: boatCable('2/0', 'open', 1, 'drop: max 3 kg') })
    expect(load?.dropLimit).toBeUndefined()
    expect(load?.carries).toBe(330) // 33 CFR 183.425 Table 5
  })
})

it('a battery used down to 0 V is refused where it is written, and no current worked out from it', () => {
  const { block, lookup } = blockIn(jobOf({ battery: 'nominal: 96 V\n  window: 0..108 V' }), 'main.feed')
  const outcome = cableLoading(block, lookup)
  expect(outcome.ok).toBe(false)
  expect(!outcome.ok && outcome.fault.words).toContain('window of the battery cannot be used as written')
})

describe('what protects a cable', () => {
  const fuse = (within: string, rating = '315 A') =>
    `protection main-fuse {\n    rating: ${rating}\n    in: ${within}\n  }\n`
  const feed = (text: string) => {
    const { block, lookup } = blockIn(text, 'main.feed')
    return isProtected(block, lookup)
  }

  it('is found beside it, and at the top of the file', () => {
    expect(feed(jobOf())).toBe(false)
    expect(feed(jobOf({ rest: fuse('feed') }))).toBe(true)
    expect(feed(jobOf() + fuse('main.feed'))).toBe(true)
  })
  it('is not the fuse of another drive whose cable has the same name', () => {
    const twin = jobOf()
      .replace('drive main', 'drive port')
      .replace(/^battery[^}]*}\n/, '')
    expect(feed(`${jobOf()}${twin}${fuse('port.feed')}`)).toBe(false)
  })
  it('may be a fuse whose `in` cannot be read', () => {
    expect(feed(jobOf({ rest: fuse('3 mm') }))).toBe(true)
  })
  // 33 CFR 183.455(c)(1): below 50 V up to 150 % of what the conductor carries, 1.5 × 330 A × 0.85 = 420.75 A.
  it('may stand half as much again above the cable below 50 V (33 CFR 183.455(c)(1))', () => {
    const { block, lookup } = blockIn(
      jobOf({
        battery: 'nominal: 24 V\n  window: 21..29 V',
        motor: 'power: 3 kW',
        cable: boatCable('2/0', 'machinery-space', 2),
      }),
      'main.feed',
    )
    expect(ratingOf(420, block, lookup)?.verdict).toBe('allowed-above')
    expect(ratingOf(421, block, lookup)?.verdict).toBe('above-conductor')
  })
  // 33 CFR 183.455(c)(2) from 50 V up: a 48 V bank is above that on charge (24 cells of 2.5 V are 60 V); a 36 V one, at 45 V, is not.
  it.each([
    ['48 V', 'above-conductor'],
    ['36 V', 'allowed-above'],
  ])('a bank of %s whose window is not said: %s (33 CFR 183.455(c))', (nominal, verdict) => {
    const { block, lookup } = blockIn(
      jobOf({
        battery: `nominal: ${nominal}`,
        motor: 'power: 3 kW',
        cable: boatCable('2/0', 'machinery-space', 2),
      }),
      'main.feed',
    )
    expect(ratingOf(420, block, lookup)?.verdict).toBe(verdict)
  })
  it('is judged from where the cable stands, wherever the fuse does', () => {
    const { block } = blockIn(jobOf() + fuse('main.feed'), 'main.feed')
    const { lookup } = blockIn(jobOf() + fuse('main.feed'), 'main-fuse')
    expect(ratingOf(630, block, lookup)?.verdict).toBe('above-conductor')
  })
})

describe('phase map', () => {
  const faults = (sides: string, map: string) => {
    const { block, lookup } = blockIn(
      `drive main {\n  ${sides}\n  phase-map p {\n    ${map}\n  }\n}\n`,
      'main',
    )
    const at = block.children.find((child) => child.kind === 'phase-map')
    return (
      at && phaseFaults(at, lookup.from(at)).map(({ type, side, terminal }) => `${type}-${side} ${terminal}`)
    )
  }
  const both = 'controller { terminals: A, B, C }\n  motor main { power: 1 kW  terminals: U, V, W }'
  it('swapped leads are a good map: IEC 60034-8 makes them the other direction of rotation', () => {
    expect(faults(both, 'A to U, B to W, C to V')).toEqual([])
  })
  it('a mark listed twice is left out once (IEC 60034-8: each terminal has a mark of its own)', () => {
    const twice = both.replace('U, V, W', 'U, U, W')
    expect(faults(twice, 'A to W')).toEqual(['missing-from B', 'missing-from C', 'missing-to U'])
  })
  it('a terminal used twice shows though no terminals are stated', () => {
    expect(faults('', 'A to U, B to V, C to V')).toEqual(['doubled-to V'])
  })
})

it('whatever the figures, there is a loading of finite numbers or none', () => {
  const number = fc.oneof(
    fc.double({ noNaN: true, min: -1e12, max: 1e12 }),
    fc.constantFrom(0, 1e-300, 1e300, -1, 1e9),
  )
  fc.assert(
    fc.property(fc.tuple(number, number, number, number), ([area, length, power, low]) => {
      const cable = `conductor: ${area} mm2\n length: ${length} m\n insulation: 105 degC`
      const load = loading({
        cable,
        motor: `power: ${power} W`,
        battery: `nominal: 96 V\n window: ${low}..1000 V`,
      })
      if (!load) return
      for (const n of [load.current, load.dropVolts, load.carries, load.drop ?? 1])
        expect(Number.isFinite(n) && n > 0).toBe(true)
    }),
    { numRuns: 100 },
  )
})

it('what neither end nor the file tells is not guessed', () => {
  const { block, lookup } = blockIn(jobOf({ ends: 'from: controller\n to: controller' }), 'main.feed')
  expect(systemOf(block, lookup)).toBeUndefined()
  expect(cableLoading(block, lookup)).toMatchObject({ ok: false, fault: { type: 'unsaid' } })
})
