// Facts that contradict each other or do not suit each other: each rule of the two tables is broken once and kept once. Figures: the reason and the
// source are listed with each rule (docs/plausible.md); the jobs are in relation-cases.ts, worked examples below.
import { readFileSync } from 'node:fs'
import path from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { plausible } from '../../../server/src/areas/across/plausible.ts'
import { statedTwice } from '../../../server/src/areas/across/stated-twice.ts'
import { allChecks } from '../../../server/src/areas/index.ts'
import { leastFault } from '../../../server/src/engineering/electrical/least-fault.ts'
import { shearStress, torqueOf } from '../../../server/src/engineering/torsion.ts'
import { OutOfRange } from '../../../server/src/quantity/out-of-range.ts'
import { findingsOf } from '../../checks/marks.ts'
import { motorCases } from '../../checks/motor-relation-cases.ts'
import { battery, cases, drive, motor } from '../../checks/relation-cases.ts'
import { randomFrom } from '../../fuzz/random.ts'
import { randomElectrics } from '../electrical/random-electrics.ts'
import { randomDrive } from '../random-drive.ts'

const ofIds = (...ids: readonly string[]) => allChecks.filter(({ id }) => ids.includes(id))
const relationChecks = ofIds('job/facts-contradict', 'job/facts-implausible')
const found = (text: string, checks = relationChecks) => findingsOf(text, checks).findings

describe.each([...statedTwice, ...plausible].map((relation) => [relation.id, relation] as const))(
  '%s',
  (id, relation) => {
    const all = cases[id] ?? motorCases[id] ?? { broken: [], kept: [] }
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
  const examples = path.resolve(import.meta.dirname, '../../../docs/examples')
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
      `protection fuse { rating: ${rating}  in: feed  interrupts: ${interrupts} }`,
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
        'cable feed { from: house  to: controller  conductor: 25 mm2  length: 2 m  insulation: 105 degC  design-current: 0.1 A }',
      )
    expect(
      findingsOf(text, ofIds('cable/undersized')).findings.find(({ check }) => check === 'cable/undersized')
        ?.message,
    ).toMatch(/must carry 205 A/)
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
