// Lugs, torques, bends, supports, lengths, voltages and terminals of cables, as findings.
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf } from '../../checks/marks.ts'

const own = [
  ...['lug-mismatch', 'too-many-lugs', 'torque-missing', 'bend-tight', 'supports-far', 'near-signal'],
  ...['phases-unequal', 'voltage-below', 'terminal-temperature', 'undersized'],
]
const checks = allChecks.filter(({ id }) => own.some((slug) => id === `cable/${slug}`))

interface Boat {
  readonly job?: string
  readonly battery?: string
  readonly controller?: string
  readonly feed?: string
  readonly phases?: string
  readonly more?: string
}

const boat = ({
  job = '',
  battery = '',
  controller = '',
  feed = '',
  phases = '',
  more = '',
}: Boat) => `job "x" {
  vessel: "Invented"
  ${job}
}
battery house { nominal: 96 V  window: 84..108 V  ${battery} }
drive main {
  motor m { power: 15 kW  voltage: 58 V  power-factor: 0.9  efficiency: 92 %  terminals: U, V, W }
  controller { input: 72..120 V  efficiency: 96 %  ${controller} }
  cable feed {
    from: house  to: controller  conductor: 95 mm2  length: 2.5 m  insulation: 105 degC  place: machinery-space
    ${feed}
  }
  cable phases {
    from: controller  to: m  conductor: 95 mm2  length: 1.8 m  insulation: 105 degC  place: machinery-space
    ${phases}
  }
  ${more}
}
`
const found = (of: Boat) => findingsOf(boat(of), checks).findings
const brief = (of: Boat) =>
  found(of).map(({ check, severity }) => `${severity} ${check.slice('cable/'.length)}`)

describe('a cable as it is laid', () => {
  it.each<[string, Boat, readonly string[]]>([
    ['nothing said', {}, []],
    [
      'lug M8 on stud M10',
      { battery: 'stud: M10  torque: 12 N·m', feed: 'lugs: M8' },
      ['error lug-mismatch'],
    ],
    [
      'lug M10 on stud 3/8 in',
      { battery: 'stud: 3/8 in  torque: 12 N·m', feed: 'lugs: M10' },
      ['warning lug-mismatch'],
    ],
    ['lug 3/8 in on stud 3/8', { battery: 'stud: "3/8-16 UNC"  torque: 12 N·m', feed: 'lugs: 3/8 in' }, []],
    [
      'the second lug is for the second end',
      { battery: 'stud: M10  torque: 12 N·m', controller: 'stud: M8  torque: 9 N·m', feed: 'lugs: M10, M8' },
      [],
    ],
    [
      'two lugs the wrong way round',
      { battery: 'stud: M10  torque: 12 N·m', controller: 'stud: M8  torque: 9 N·m', feed: 'lugs: M8, M10' },
      ['error lug-mismatch', 'warning lug-mismatch'],
    ],
    ['a stud without a torque', { battery: 'stud: M10' }, ['information torque-missing']],
    ['five conductors on a stud', { feed: 'parallel: 5' }, ['error too-many-lugs', 'error too-many-lugs']],
    ['bend 0', { feed: 'bend-radius: 0 mm' }, ['error bend-tight']],
    ['a bend that copper alone needs wider', { feed: 'bend-radius: 40 mm' }, ['error bend-tight']],
    ['a bend of a cable without a diameter', { feed: 'bend-radius: 60 mm' }, ['information bend-tight']],
    ['a bend as its maker allows', { feed: 'bend-radius: 60 mm  min-bend-radius: 60 mm' }, []],
    [
      'a bend tighter than its maker allows',
      { feed: 'bend-radius: 60 mm  min-bend-radius: 61 mm' },
      ['error bend-tight'],
    ],
    [
      'a thick cable in a bend of 5 D',
      { feed: 'bend-radius: 150 mm  outer-diameter: 30 mm' },
      ['error bend-tight'],
    ],
    [
      'a battery cable with supports at 400 mm, ISO',
      { job: 'rules: iso', feed: 'support-spacing: 400 mm' },
      ['warning supports-far'],
    ],
    ['the same, ABYC', { job: 'rules: abyc', feed: 'support-spacing: 400 mm' }, []],
    ['the same, no rules', { feed: 'support-spacing: 400 mm' }, ['warning supports-far']],
    ['phase cables with supports at 400 mm', { job: 'rules: iso', phases: 'support-spacing: 400 mm' }, []],
    [
      'the same in a sheath',
      { job: 'rules: iso', phases: 'support-spacing: 400 mm  sheathed: yes' },
      ['warning supports-far'],
    ],
    ['a feed 250 mm from a signal cable', { feed: 'signal-spacing: 250 mm' }, []],
    ['a feed 150 mm from one', { feed: 'signal-spacing: 150 mm' }, ['information near-signal']],
    ['phase cables 250 mm from one', { phases: 'signal-spacing: 250 mm' }, ['information near-signal']],
    ['phase cables 50 mm from one', { phases: 'signal-spacing: 50 mm' }, ['warning near-signal']],
    ['phases alike', { phases: 'phase-lengths: U 1.80 m, V 1.82 m, W 1.79 m' }, []],
    ['phases in other units', { phases: 'phase-lengths: U 1.80 m, V 182 cm, W 71 in' }, []],
    ['a long phase', { phases: 'phase-lengths: U 1.80 m, V 1.60 m, W 1.79 m' }, ['warning phases-unequal']],
    ['two phases only', { phases: 'phase-lengths: U 1.80 m, V 1.82 m' }, ['warning phases-unequal']],
    [
      'marks of another motor',
      { phases: 'phase-lengths: A 1.80 m, B 1.82 m, C 1.80 m' },
      ['warning phases-unequal'],
    ],
    [
      'phases longer than the cable',
      { phases: 'phase-lengths: U 2 m, V 2 m, W 2 m' },
      ['warning phases-unequal'],
    ],
    ['a 48 V cable on a bank of 108 V', { feed: 'voltage: 48 V' }, ['error voltage-below']],
    ['a 100 V cable on a bank that reaches 108 V', { feed: 'voltage: 100 V' }, ['error voltage-below']],
    ['a 600 V cable', { feed: 'voltage: 600 V', phases: 'voltage: 600 V' }, []],
    ['phase cables of 60 V at a bank of 108 V', { phases: 'voltage: 60 V' }, ['error voltage-below']],
  ])('%s', (_what, of, wanted) => {
    expect([...brief(of)].sort()).toEqual([...wanted].sort())
  })
})

describe('a terminal rated below the insulation', () => {
  const feed = 'conductor: 70 mm2'
  const of = (terminal: string) => boat({ controller: terminal }).replace('conductor: 95 mm2', feed)
  const result = (terminal: string) =>
    findingsOf(of(terminal), checks).findings.filter(({ check }) => check === 'cable/terminal-temperature')

  // 15 kW / (0.92 · 0.96 · 84 V) = 202.2 A. 70 mm² at 75 °C in Table 5: between 265 A (2/0) and 310 A (3/0); machinery space 0.75.
  it.each([
    ['terminal-temperature: 105 degC', []],
    ['terminal-temperature: 90 degC', []],
    ['terminal-temperature: 75 degC', ['warning']],
    ['terminal-temperature: 60 degC', ['error', 'error']],
    ['terminal-temperature: 50 degC', ['information', 'information']],
    ['', []],
  ])('%s: %j', (terminal, severities) => {
    expect(result(terminal).map(({ severity }) => severity)).toEqual(severities)
  })
})

describe('the rules of the job', () => {
  const carries = (rules: string, section: string, bundled: number) => {
    const text = boat({ job: rules, feed: `bundled: ${bundled}` })
      .replace('conductor: 95 mm2', `conductor: ${section}`)
      .replace('power: 15 kW', 'power: 150 kW')
    const finding = findingsOf(text, checks).findings.find(({ check }) => check === 'cable/undersized')
    return [finding?.data?.['carries'], finding?.assumptions?.join('; ') ?? ''] as const
  }

  // ISO 13297 Table A.1 (from memory) 95 mm² 105 °C 390 A; law √(55/75) = 0.8563; 0.7 from four conductors. 33 CFR 183.425: 4/0 445 A, 0.85, 0.70 for three.
  it('choose one set of tables and factors', () => {
    expect(carries('rules: iso', '95 mm2', 2)[0]).toBeCloseTo(390 * Math.sqrt(55 / 75), 6)
    expect(carries('rules: iso', '95 mm2', 3)[0]).toBeCloseTo(390 * Math.sqrt(55 / 75), 6)
    expect(carries('rules: iso', '95 mm2', 4)[0]).toBeCloseTo(390 * Math.sqrt(55 / 75) * 0.7, 6)
    expect(carries('rules: iso', '95 mm2', 7)[0]).toBeCloseTo(390 * Math.sqrt(55 / 75) * 0.6, 6)
    expect(carries('rules: iso', '95 mm2', 25)[0]).toBeCloseTo(390 * Math.sqrt(55 / 75) * 0.5, 6)
    expect(carries('rules: abyc', '4/0 AWG', 3)[0]).toBeCloseTo(264.775, 6)
    expect(carries('rules: abyc', '4/0 AWG', 4)[0]).toBeCloseTo(445 * 0.85 * 0.6, 6)
  })

  it('not chosen are the lower table and the stricter factors, and the finding says so', () => {
    for (const bundled of [2, 3, 4, 7]) {
      const [silent, assumed] = carries('', '95 mm2', bundled)
      const chosen = ['rules: iso', 'rules: abyc'].map(
        (rules) => carries(rules, '95 mm2', bundled)[0] as number,
      )
      expect(silent as number).toBeLessThanOrEqual(Math.min(...chosen) * (1 + 1e-9))
      expect(assumed).toContain('the job chooses no `rules`')
    }
    expect(carries('rules: iso', '95 mm2', 2)[1]).not.toContain('chooses no')
  })
})

describe('the strands of a cable', () => {
  const drop = (feed: string) => {
    const text = boat({ feed: `${feed}  drop: max 0.1 %` })
    const all = allChecks.filter(({ id }) => id === 'cable/voltage-drop')
    return findingsOf(text, all).findings.find(({ check }) => check === 'cable/voltage-drop')
  }
  const volts = (feed: string) => Number.parseFloat(drop(feed)?.message.match(/is ([\d.]+)/)?.[1] ?? '')

  // IEC 60228, 95 mm²: class 2 plain 0.193, tinned 0.195, class 5 plain 0.206, tinned 0.210 Ω/km.
  it('count in its resistance', () => {
    const base = volts('')
    expect(volts('conductor-class: 5  tinned: yes')).toBe(base)
    expect(volts('conductor-class: 6  tinned: yes')).toBe(base)
    expect(volts('conductor-class: 2  tinned: no') / base).toBeCloseTo(0.193 / 0.21, 2)
    expect(volts('conductor-class: 5  tinned: no') / base).toBeCloseTo(0.206 / 0.21, 2)
    expect(drop('conductor-class: 5  tinned: yes')?.assumptions?.join()).not.toContain('tinned')
    expect(drop('')?.assumptions?.join()).toContain('tinned')
  })

  it('of a solid conductor are refused', () => {
    const bad = findingsOf(boat({ feed: 'conductor-class: 1' }), allChecks).findings.map(({ check }) => check)
    expect(bad).toContain('job/value-not-allowed')
  })
})
