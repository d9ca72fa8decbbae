// Facts that contradict each other or do not suit each other: each rule of the two tables is broken once and kept once. Figures: the reason and the
// source are listed with each rule (docs/plausible.md); worked examples are below.
import { readFileSync } from 'node:fs'
import path from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../server/src/checks/index.ts'
import { plausible } from '../../server/src/checks/plausible.ts'
import { statedTwice } from '../../server/src/checks/stated-twice.ts'
import { leastFault } from '../../server/src/engineering/electrical/least-fault.ts'
import { shearStress, torqueOf } from '../../server/src/engineering/torsion.ts'
import { OutOfRange } from '../../server/src/quantity/out-of-range.ts'
import { randomFrom } from '../fuzz/random.ts'
import { randomDrive } from '../plans/random-drive.ts'
import { findingsOf } from './marks.ts'
import { randomElectrics } from './random-electrics.ts'

const ofIds = (...ids: readonly string[]) => allChecks.filter(({ id }) => ids.includes(id))
const relationChecks = ofIds('job/facts-contradict', 'job/facts-implausible')
const found = (text: string, checks = relationChecks) => findingsOf(text, checks).findings
const drive = (...parts: readonly string[]) => `drive main {\n${parts.join('\n')}\n}\n`
const battery = (facts: string) => `battery house { ${facts} }\n`

interface Case {
  readonly broken: readonly string[]
  readonly kept: readonly string[]
}

const shaft = 'shaft { diameter: 35 mm  length: 2.65 m }'
const motor = 'motor m { power: 15 kW  speed: 1500 rpm  voltage: 58 V  power-factor: 0.9  efficiency: 92 % }'
const bearing = (facts: string) => drive(shaft, `bearing stern { ${facts} }`)
const log = (facts: string) => drive(shaft, `shaft-log { ${facts} }`)
const cable = (name: string, facts: string) =>
  `cable ${name} { ${facts}  length: 2 m  insulation: 105 degC }\n`
const feedOf = (name: string, current: string) =>
  cable(name, `from: house  to: controller  conductor: 95 mm2  current: ${current}`)
const phasesOf = (name: string, current: string) =>
  cable(name, `from: controller  to: m  conductor: 70 mm2  current: ${current}`)
const fed = (cables: string) =>
  battery('nominal: 96 V  window: 84..108 V') + drive(motor, 'controller { efficiency: 96 % }', cables)
const target = (fact: string) => (value: string) => drive(`target { ${fact}: ${value} }`)

/** A job that a rule is broken in and one that it is kept in, at the bound where there is one; inch and metric. */
const cases: Readonly<Record<string, Case>> = {
  'short-circuit': {
    // 108 V / 14 mΩ = 7.71 kA (Ohm's law).
    broken: ['1 A', '3.8 kA', '15.5 kA', '1000 kA'].map((amps) =>
      battery(
        `nominal: 96 V  window: 84..108 V  internal-resistance: 14 mohm  short-circuit-current: ${amps}`,
      ),
    ),
    kept: ['3.9 kA', '8 kA', '15.4 kA'].map((amps) =>
      battery(
        `nominal: 96 V  window: 84..108 V  internal-resistance: 14 mohm  short-circuit-current: ${amps}`,
      ),
    ),
  },
  'log-clearance': {
    // 60 mm less 35 mm is 25 mm (geometry).
    broken: [
      log('bore: 60 mm  clearance: top 12 mm, bottom 10 mm'),
      log('bore: 2.362 in  clearance: top 0.7 in, bottom 0.7 in'),
      log('bore: 60 mm  clearance: 45 deg 20 mm, 225 deg 20 mm'),
    ],
    kept: [
      log('bore: 60 mm  clearance: top 12.4 mm, starboard 12.1 mm, bottom 12.6 mm, port 12.9 mm'),
      log('bore: 60 mm  clearance: top 12 mm, bottom 11 mm'),
      log('bore: 60 mm  clearance: top 3 mm'),
    ],
  },
  'cable-current': {
    // 15 kW / 0.92 / 0.96 / 84 V = 202 A (definition of efficiency): 80 % is 162 A, a quarter 50.5 A. Between phases
    // 15 kW / (sqrt 3 x 58 V x 0.9 x 0.92) = 180 A: 80 % is 144 A.
    broken: [
      ...['0.1 A', '51 A', '161 A'].map((current) => fed(feedOf('feed', current))),
      fed(feedOf('feed', '50 A') + feedOf('feed-2', '202 A')),
      fed(phasesOf('phases', '140 A')),
    ],
    kept: [
      ...['163 A', '202 A', '500 A'].map((current) => fed(feedOf('feed', current))),
      fed(feedOf('feed', '51 A') + feedOf('feed-2', '202 A')),
      fed(phasesOf('phases', '146 A')),
      fed(phasesOf('phases', '50 A') + phasesOf('phases-2', '150 A')),
    ],
  },
  'bearing-on-shaft': {
    broken: [bearing('at: 100 m'), bearing('at: 2.66 m'), bearing('at: 8.8 ft')],
    kept: [bearing('at: 0.21 m'), bearing('at: 2.65 m'), bearing('at: 0 m'), bearing('at: 8 ft')],
  },
  'bearing-shorter-than-shaft': {
    broken: [bearing('length: 3 m')],
    kept: [bearing('length: 140 mm')],
  },
  'bearing-near-shaft-size': {
    broken: [bearing('bore: 39.6 mm'), bearing('bore: 3 in')],
    kept: [bearing('bore: 39.4 mm'), bearing('bore: 1.386 in')],
  },
  'log-larger-than-shaft': {
    broken: [log('bore: 5 mm'), log('bore: 35 mm'), log('bore: 1-1/4 in')],
    kept: [log('bore: 60 mm'), log('bore: 36 mm')],
  },
  'log-clear-of-shaft': {
    broken: [log('clearance: top 0 mm, bottom 0 mm'), log('clearance: top 0 in, bottom 0.5 in')],
    kept: [log('clearance: top 0.1 mm, bottom 24 mm')],
  },
  'seal-has-clamps': {
    broken: [drive('seal { clamps-each-end: 0 }')],
    kept: [drive('seal { clamps-each-end: 1 }'), drive('seal { clamps-each-end: 2 }')],
  },
  'shaft-slender': {
    broken: ['50 mm', '104 mm', '36 m', '4 in'].map((length) =>
      drive(`shaft { diameter: 35 mm  length: ${length} }`),
    ),
    kept: ['105 mm', '35 m', '8 ft'].map((length) => drive(`shaft { diameter: 35 mm  length: ${length} }`)),
  },
  'shaft-bears-torque': {
    // 95.5 N·m behind 2.5:1 is 239 N·m; at 200 MPa that takes 18.3 mm (torsion of a round bar).
    broken: ['5 mm', '18 mm', '0.7 in'].map((size) =>
      drive(`shaft { diameter: ${size} }`, motor, 'gear { ratio: 2.5 }'),
    ),
    kept: [
      ...['18.5 mm', '35 mm', '1-3/8 in'].map((size) =>
        drive(`shaft { diameter: ${size} }`, motor, 'gear { ratio: 2.5 }'),
      ),
      drive('shaft { diameter: 5 mm }', motor, 'gear { turns: same }'),
    ],
  },
  'propeller-larger-than-shaft': {
    broken: [drive(shaft, 'propeller { diameter: 104 mm }')],
    kept: [drive(shaft, 'propeller { diameter: 105 mm }'), drive(shaft, 'propeller { diameter: 16 in }')],
  },
  'propeller-pitch': {
    broken: ['100 mm', '1100 mm', '45 in'].map((pitch) =>
      drive(`propeller { diameter: 420 mm  pitch: ${pitch} }`),
    ),
    kept: ['126 mm', '300 mm', '1050 mm', '12 in'].map((pitch) =>
      drive(`propeller { diameter: 420 mm  pitch: ${pitch} }`),
    ),
  },
  'coupling-bears-torque': {
    broken: ['200 N·m', '170 lbf·ft'].map((torque) =>
      drive(motor, 'gear { ratio: 2.5 }', `coupling { rated-torque: ${torque} }`),
    ),
    kept: ['400 N·m', '239 N·m', '177 lbf·ft'].map((torque) =>
      drive(motor, 'gear { ratio: 2.5 }', `coupling { rated-torque: ${torque} }`),
    ),
  },
  'coupling-bolt-torque': {
    broken: [
      '4 x M10 class 8.8, 45000 N·m',
      '4 x M10 class 8.8, 0.4 N·m',
      '4 x "3/8-16 UNC" class 5, 300 lbf·ft',
    ].map((bolts) => drive(`coupling { bolts: ${bolts} }`)),
    kept: [
      '4 x M10 class 8.8, 45 N·m',
      '4 x M10 class 12.9, 85 N·m',
      '4 x "3/8-16 UNC" class 5, 30 lbf·ft',
      '4 x M10',
    ].map((bolts) => drive(`coupling { bolts: ${bolts} }`)),
  },
  'bed-torque': {
    broken: ['1000 N·m', '1 N·m'].map((torque) =>
      drive(`bed { adjuster: stud-and-nuts  thread: M16  torque: ${torque} }`),
    ),
    kept: ['90 N·m', '120 N·m'].map((torque) =>
      drive(`bed { adjuster: stud-and-nuts  thread: M16  torque: ${torque} }`),
    ),
  },
  'controller-gives-motor-current': {
    // 15000 / (√3 · 58 · 0.9 · 0.92) = 180.3 A; nine tenths are 162.3 A.
    broken: ['0.1 A', '160 A'].map((current) => drive(motor, `controller { current: ${current} }`)),
    kept: [
      ...['163 A', '220 A'].map((current) => drive(motor, `controller { current: ${current} }`)),
      drive(motor, 'controller a { current: 90 A }', 'controller b { current: 90 A }'),
    ],
  },
  'motor-voltage': {
    broken: [
      battery('nominal: 96 V  window: 84..108 V') + drive('motor m { voltage: 400 V }'),
      battery('nominal: 96 V') + drive('motor m { voltage: 121 V }'),
    ],
    kept: [
      battery('nominal: 96 V  window: 84..108 V') + drive('motor m { voltage: 76 V }'),
      drive('motor m { voltage: 400 V }'),
    ],
  },
  'motor-mass': {
    broken: ['0.5 kg', '4000 kg', '1 lb'].map((mass) => drive(`motor m { power: 15 kW  mass: ${mass} }`)),
    kept: ['62 kg', '0.75 kg', '3000 kg', '137 lb'].map((mass) =>
      drive(`motor m { power: 15 kW  mass: ${mass} }`),
    ),
  },
  'battery-fault': {
    // 2 and 500 A for each of 210 Ah: 420 A and 105 kA.
    broken: ['300 A', '110 kA'].map((amps) =>
      battery(`nominal: 96 V  capacity: 210 Ah  short-circuit-current: ${amps}`),
    ),
    kept: ['420 A', '8 kA', '105 kA'].map((amps) =>
      battery(`nominal: 96 V  capacity: 210 Ah  short-circuit-current: ${amps}`),
    ),
  },
  ...Object.fromEntries(
    ['shaft-droop', 'afloat-up', 'afloat-to-starboard', 'maker-up', 'maker-to-starboard'].map((fact) => [
      `target.${fact}`,
      {
        broken: ['50 mm', '-5.1 mm', '1 in'].map(target(fact)),
        kept: ['5 mm', '-0.05 mm', '0.1 in', '0 mm'].map(target(fact)),
      },
    ]),
  ),
  ...Object.fromEntries(
    [
      'shaft-slope',
      'afloat-slope-up',
      'afloat-slope-to-starboard',
      'maker-slope-up',
      'maker-slope-to-starboard',
    ].map((fact) => [
      `target.${fact}`,
      {
        broken: ['21 mrad', '-2 deg'].map(target(fact)),
        kept: ['20 mrad', '-0.3 mrad', '1 deg'].map(target(fact)),
      },
    ]),
  ),
  'foot.growth': {
    broken: ['50 mm', '-4 mm'].map((growth) => drive(`bed { foot a { growth: ${growth} } }`)),
    kept: ['0.1 mm', '-3 mm', '0.004 in'].map((growth) => drive(`bed { foot a { growth: ${growth} } }`)),
  },
}

describe.each([...statedTwice, ...plausible].map((relation) => [relation.id, relation] as const))(
  '%s',
  (id, relation) => {
    const all = cases[id] ?? { broken: [], kept: [] }
    /** What this rule alone finds. */
    const ofRule = (text: string) => {
      const check = statedTwice.includes(relation) ? 'job/facts-contradict' : 'job/facts-implausible'
      return found(text, ofIds(check)).filter(
        ({ source, severity }) => source === relation.source && severity === relation.severity,
      )
    }

    it('has cases both ways, and a reason', () => {
      expect(all.broken.length).toBeGreaterThan(0)
      expect(all.kept.length).toBeGreaterThan(0)
      expect(relation.why).toMatch(/\.$/)
      expect(relation.rule).toMatch(/\.$/)
    })
    it.each(all.broken)('is broken in %s', (text) => {
      expect(ofRule(text).length).toBe(1)
    })
    it.each(all.kept)('is kept in %s', (text) => {
      expect(ofRule(text)).toEqual([])
    })
  },
)

describe('no rule is broken', () => {
  const examples = path.resolve(import.meta.dirname, '../../docs/examples')
  it.each(['survey-launch-as-built', 'survey-launch-as-found', 'inch-day-boat', 'twin-screw-ferry'])(
    'in the demo %s',
    (name) => {
      const text = readFileSync(path.join(examples, `${name}.wright`), 'utf8')
      const others = Object.fromEntries(
        ['parts/drivetrain.wright'].map((file) => [file, readFileSync(path.join(examples, file), 'utf8')]),
      )
      const { findings } = findingsOf(text, relationChecks, { others })
      expect(findings).toEqual([])
    },
  )

  it.each([
    ['electrical', randomElectrics],
    ['alignment', randomDrive],
  ] as const)(
    'in 300 random %s jobs',
    (_, make) => {
      const random = randomFrom(11)
      for (let i = 0; i < 300; i++) expect(found(make(random))).toEqual([])
    },
    60_000,
  )
})

describe('the worse of two figures counts', () => {
  const job = (stated: string, interrupts: string, rating = '315 A') =>
    battery(
      `nominal: 96 V  window: 84..108 V  internal-resistance: 14 mohm  short-circuit-current: ${stated}`,
    ) +
    drive(
      'controller { efficiency: 96 % }',
      'cable feed { from: house  to: controller  conductor: 95 mm2  length: 2.5 m  insulation: 105 degC  current: 200 A }',
      `protection fuse { rating: ${rating}  protects: feed  interrupts: ${interrupts} }`,
    )
  const codes = (text: string) =>
    found(
      text,
      ofIds(
        'job/facts-contradict',
        'job/facts-implausible',
        'protection/interrupts-too-little',
        'protection/cannot-open',
      ),
    ).map(({ check }) => check)

  // 7714 A from the resistance (Ohm's law): a stated 1 A lets no fuse of 10 A pass, and cannot open one of 315 A (1.6 times 315 A is 504 A).
  it('the higher one for breaking, the lower one for opening', () => {
    expect(codes(job('1 A', '10 A'))).toEqual(
      expect.arrayContaining([
        'job/facts-contradict',
        'protection/interrupts-too-little',
        'protection/cannot-open',
      ]),
    )
    expect(codes(job('100 kA', '20 kA'))).toContain('protection/interrupts-too-little')
    expect(codes(job('100 kA', '20 kA'))).not.toContain('protection/cannot-open')
    expect(codes(job('8 kA', '20 kA')).filter((id) => /^protection|facts/.test(id))).toEqual([])
  })

  it('a second figure never makes a verdict milder than the worse one alone', () => {
    const amps = fc.integer({ min: 1, max: 1_000_000 })
    fc.assert(
      fc.property(amps, amps, (stated, interrupts) => {
        const both = codes(job(`${stated} A`, `${interrupts} A`))
        const alone = codes(
          job(`${stated} A`, `${interrupts} A`).replace(`short-circuit-current: ${stated} A`, ''),
        )
        const contradict = both.includes('job/facts-contradict')
        if (contradict && alone.includes('protection/interrupts-too-little'))
          expect(both).toContain('protection/interrupts-too-little')
        if (interrupts < stated) expect(both).toContain('protection/interrupts-too-little')
        expect(contradict).toBe(Math.max(stated, 108 / 0.014) > 2 * Math.min(stated, 108 / 0.014))
      }),
      { numRuns: 60, endOnFailure: true },
    )
  })

  it('a stated current far below the load is not what the cable is checked against', () => {
    const text =
      battery('nominal: 96 V  window: 84..108 V') +
      drive(
        motor,
        'controller { efficiency: 96 % }',
        'cable feed { from: house  to: controller  conductor: 25 mm2  length: 2 m  insulation: 105 degC  current: 0.1 A }',
      )
    expect(
      findingsOf(text, ofIds('cable/undersized')).findings.find(({ check }) => check === 'cable/undersized')
        ?.message,
    ).toMatch(/must carry 203 A/)
  })
})

describe('formulas of the rules', () => {
  // 15 kW at 1500 rpm: 95.49 N·m (definition of power). 100 N·m on 20 mm: 63.66 MPa (torsion of a round bar, 16 T / (π d³)).
  it('torque and shear stress', () => {
    expect(torqueOf({ power: 15e3, speed: (1500 * 2 * Math.PI) / 60 })).toBeCloseTo(95.493, 3)
    expect(shearStress({ torque: 100, diameter: 0.02 }) / 1e6).toBeCloseTo(63.662, 3)
    expect(() => torqueOf({ power: 1, speed: 0 })).toThrow(OutOfRange)
    expect(() => shearStress({ torque: 1, diameter: 0 })).toThrow(OutOfRange)
  })
  // IEC 60269-1, gG: the conventional fusing current is 1.6 times the rating (from memory).
  it('least current that opens a fuse', () => {
    expect(leastFault(100)).toBeCloseTo(160, 9)
    expect(() => leastFault(0)).toThrow(OutOfRange)
  })
})
