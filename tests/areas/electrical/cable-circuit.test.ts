import { describe, expect, it } from 'vitest'
import { cableCurrent } from '../../../server/src/areas/electrical/plans/design-current.ts'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf } from '../../checks/marks.ts'
import { blockIn } from '../job-text.ts'

const bank = (name = 'b') => `battery ${name} { nominal: 48 V  window: 44..56 V }\n`
/** So short that nothing is lost in it to speak of: load-flow.test.ts is about the drop. */
const cable = (name: string, from: string, to: string, more = '') =>
  `cable ${name} { from: ${from}  to: ${to}  conductor: 1000 mm2  length: 0.01 m  insulation: 105 degC ${more} }\n`
const motor = (name: string) => `motor ${name} { power: 5 kW }\n`
const fuse = (within: string, rating: number) =>
  `protection f-${within} { rating: ${rating} A  in: ${within} }\n`
const drive = (...inside: readonly string[]) => `drive main {\n${inside.join('')}}\n`

const currentOf = (text: string, path: string) => {
  const { block, lookup } = blockIn(text, path)
  const outcome = cableCurrent(block, lookup)
  return outcome.ok ? outcome.value.current : outcome.fault.because
}
const codes = (text: string) => findingsOf(text, allChecks).findings.map(({ check }) => check)

/** Definition of efficiency: 5 kW at 90 % and 95 % from 44 V take 132.9 A. */
const one = 5000 / 0.9 / 0.95 / 44

describe('the current of a feeder is that of every motor behind it (Kirchhoff, definition of efficiency)', () => {
  const c = 'controller c { }\n'
  const two = drive(motor('m'), motor('n'), c, cable('f', 'b', 'c'), fuse('f', 200))

  it('with two motors on the one controller of the drive', () => {
    expect(currentOf(bank() + two, 'main.f')).toBeCloseTo(2 * one, 2)
    expect(codes(bank() + two)).toContain('protection/below-load') // 1.25 × 266 A is above 200 A
  })

  it('with two controllers, each with a phase cable of its own', () => {
    const both = drive(
      'motor m { power: 5 kW }\nmotor n { power: 10 kW }\ncontroller c { }\ncontroller d { }\n',
      cable('f', 'b', 'c'),
      cable('g', 'b', 'd'),
      cable('p', 'c', 'm'),
      cable('q', 'd', 'n'),
    )
    expect(currentOf(bank() + both, 'main.f')).toBeCloseTo(one, 2)
    expect(currentOf(bank() + both, 'main.g')).toBeCloseTo(2 * one, 2)
  })

  it('through a common protection, and from one controller on to the next', () => {
    const parts = [motor('m'), motor('n'), 'controller c { }\ncontroller d { }\n']
    const phases = [cable('p', 'c', 'm'), cable('q', 'd', 'n')]
    const bus = 'protection bus { rating: 400 A  in: f }\n'
    const star = drive(
      ...parts,
      bus,
      cable('e', 'b', 'bus'),
      cable('f', 'bus', 'c'),
      cable('g', 'bus', 'd'),
      ...phases,
    )
    expect(currentOf(bank() + star, 'main.e')).toBeCloseTo(2 * one, 2)
    expect(currentOf(bank() + star, 'main.f')).toBeCloseTo(one, 2)
    const chain = drive(...parts, cable('f', 'b', 'c'), cable('g', 'c', 'd', 'system: dc'), ...phases)
    expect(currentOf(bank() + chain, 'main.f')).toBeCloseTo(2 * one, 2)
    expect(currentOf(bank() + chain, 'main.g')).toBeCloseTo(one, 2)
  })

  it('through a cable that feeds two drives', () => {
    const half = (name: string) =>
      drive(motor('m'), c, cable('f', 'bus', 'c')).replace('drive main', `drive ${name}`)
    const text = `${bank()}${bank('s')}${cable('spare', 'b', 's')}protection bus { rating: 400 A  in: spare }\n${cable('e', 'b', 'bus')}${half('port')}${half('starboard')}`
    expect(currentOf(text, 'e')).toBeCloseTo(2 * one, 2)
    expect(currentOf(text, 'port.f')).toBeCloseTo(one, 2)
  })

  // 5 kW at 90 % and 80 % from 44 V take 157.8 A, whichever controller is written first.
  it('through two controllers of one motor: the one that loses most may carry it all', () => {
    const poor = 'controller d { efficiency: 80 % }\n'
    for (const feeders of [
      [cable('f', 'b', 'c'), cable('g', 'c', 'd', 'system: dc')],
      [cable('f', 'b', 'd'), cable('g', 'd', 'c', 'system: dc')],
    ]) {
      const text = drive(motor('m'), c, poor, ...feeders, cable('p', 'c', 'm'), cable('q', 'd', 'm'))
      expect(currentOf(bank() + text, 'main.f')).toBeCloseTo(5000 / 0.9 / 0.8 / 44, 2)
    }
  })

  it('with all parts at the top of the file', () => {
    expect(currentOf(`${bank()}${motor('m')}${c}${cable('f', 'b', 'c')}`, 'f')).toBeCloseTo(one, 2)
  })

  it('from two banks: each may have to carry it all', () => {
    const text = bank() + bank('s') + drive(motor('m'), c, cable('f', 'b', 'c'), cable('g', 's', 'c'))
    expect(currentOf(text, 'main.f')).toBeCloseTo(one, 2)
  })
})

describe('a current that cannot be told is said, never passed over', () => {
  const f = cable('f', 'b', 'c')
  it.each([
    [
      'two controllers and no phase cable',
      drive(motor('m'), motor('n'), 'controller c { }\ncontroller d { }\n', f),
      'which controller drives motor m',
    ],
    ['a drive with no motor', drive('controller c { }\n', f), 'which motor controller c drives'],
    ['a cable to a fuse that nothing follows', drive('protection c { }\n', f), 'what it feeds'],
    [
      'two controllers, one motor, joined to the other',
      drive(motor('m'), 'controller c { }\ncontroller d { }\n', f, cable('p', 'd', 'm')),
      'which motor controller c drives',
    ],
    [
      'a cable between two controllers',
      drive(motor('m'), 'controller c { }\ncontroller d { }\n', cable('f', 'c', 'd')),
      'DC or three phases',
    ],
  ])('%s', (_what, text, words) => {
    expect(currentOf(bank() + text, 'main.f')).toContain(words)
    expect(codes(bank() + text)).toContain('cable/current-unknown')
  })
})

/** 33 CFR 183.455(c): a rating is held against what the cable carries, whatever the load. */
describe('a fuse is held against its cable though the load is not known', () => {
  const thin =
    'cable f { from: b  to: c  conductor: 1 mm2  length: 2 m  insulation: 105 degC  place: open }\n'
  it('and the cable too thin for its load is no reason to be silent', () => {
    const alone = bank() + drive('controller c { terminals: A, B, C }\n', thin, fuse('f', 500))
    expect(codes(alone)).toContain('protection/above-cable')
    const loaded = bank() + drive(motor('m'), 'controller c { }\n', thin, fuse('f', 100))
    expect(codes(loaded)).toEqual(expect.arrayContaining(['protection/above-cable', 'protection/below-load']))
  })
})

/** 33 CFR 183.455(a) and (b): protection at the source of power, whatever is at the other end. */
it.each(['', 'system: three-phase', 'system: dc'])(
  'a battery cable to a motor needs its fuse: %s',
  (system) => {
    const text = bank() + drive('motor a { power: 5 kW  terminals: U, V, W }\n', cable('f', 'b', 'a', system))
    expect(codes(text)).toEqual(expect.arrayContaining(['protection/none', 'cable/battery-to-motor']))
  },
)

/** 33 CFR 183.455(b)(2): at most 40 in (1.016 m) of conductor before the fuse, in a sheath. */
it.each([
  ['1.016 m', false],
  ['1.017 m', true],
])('a cable of %s from battery to fuse needs one of its own: %s (33 CFR 183.455(b)(2))', (length, needed) => {
  const lead = cable('e', 'b', 'bus').replace('0.01 m ', `${length} `)
  const bus = 'protection bus { rating: 200 A  in: f }\n'
  const text = bank() + drive(motor('m'), 'controller c { }\n', bus, lead, cable('f', 'bus', 'c'))
  expect(codes(text).includes('protection/none')).toBe(needed)
})
