// Which way the propeller turns with the controller set ahead, through marks, phases, settings, gear and hand.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf } from '../../checks/marks.ts'
import { resultsIn } from '../results-in.ts'

interface Drive {
  readonly motor?: string
  readonly controller?: string
  readonly map?: string
  readonly gear?: string
  readonly hand?: string
  readonly name?: string
}

const drive = ({
  motor = 'terminals: U, V, W  turns: clockwise  position-sensor: none',
  controller = 'terminals: A, B, C  reversed: no',
  map = 'A to U, B to V, C to W',
  gear = '',
  hand = 'right-hand',
  name = 'main',
}: Drive) => `drive ${name} {
  propeller { diameter: 420 mm${hand && `  turns: ${hand}`} }
  ${gear && `gear { ratio: 2.5  turns: ${gear} }`}
  motor m { power: 15 kW  speed: 1500 rpm  ${motor} }
  controller { ${controller} }
  ${map && `phase-map { ${map} }`}
}
`

const found = (text: string) =>
  findingsOf(text, allChecks)
    .findings.filter(({ check }) => check.startsWith('phases/'))
    .map(({ check, severity }) => `${severity} ${check.slice('phases/'.length)}`)

const backward = ['error turns-backward']
const open = ['information direction-unknown']

const motorWith = (sensor: string, turns = 'clockwise') =>
  `terminals: U, V, W  turns: ${turns}${sensor && `  position-sensor: ${sensor}`}`

describe('the direction of a drive', () => {
  it.each<[string, Drive, readonly string[]]>([
    ['direct, in order, right-hand', {}, []],
    ['a left-hand propeller', { hand: 'left-hand' }, backward],
    ['a gear that turns the same way', { gear: 'same' }, []],
    ['a gear that turns opposite', { gear: 'opposite' }, backward],
    ['a gear that turns opposite and a left-hand propeller', { gear: 'opposite', hand: 'left-hand' }, []],
    ['two phases exchanged', { map: 'A to V, B to U, C to W' }, backward],
    ['a cyclic shift', { map: 'A to V, B to W, C to U' }, []],
    ['the same pairs in another order', { map: 'C to W, A to U, B to V' }, []],
    ['a reversed controller', { controller: 'terminals: A, B, C  reversed: yes' }, backward],
    [
      'a reversed controller and exchanged phases',
      { controller: 'terminals: A, B, C  reversed: yes', map: 'A to V, B to U, C to W' },
      [],
    ],
    ['marks alike at both ends', { controller: 'terminals: U, V, W', map: 'U to U, V to V, W to W' }, []],
    [
      'marks alike, listed in another order: the list counts',
      { controller: 'terminals: U, W, V', map: 'U to U, V to V, W to W' },
      backward,
    ],
    [
      'marks of IEC 60034-8 and of a supply',
      {
        motor: 'terminals: "1U1-1", "1V1-1", "1W1-1"  turns: clockwise  position-sensor: none',
        controller: 'terminals: L1, L2, L3',
        map: 'L1 to "1U1-1", L2 to "1V1-1", L3 to "1W1-1"',
      },
      [],
    ],
    [
      'colours',
      {
        motor: 'terminals: yellow, green, blue  turns: counter-clockwise  position-sensor: none',
        map: 'A to yellow, B to green, C to blue',
        hand: 'left-hand',
      },
      [],
    ],
    [
      'marks that say clockwise on a motor that does not turn so',
      { motor: motorWith('none', 'counter-clockwise'), hand: 'left-hand' },
      ['information marks-unlike-standard'],
    ],
    ['in order with an encoder', { motor: motorWith('encoder') }, []],
    [
      'exchanged with an encoder',
      { motor: motorWith('encoder'), map: 'A to V, B to U, C to W' },
      ['error sensor-disagrees'],
    ],
    [
      'exchanged with a resolver and a reversed controller',
      {
        motor: motorWith('resolver'),
        controller: 'terminals: A, B, C  reversed: yes',
        map: 'A to V, B to U, C to W',
      },
      ['error sensor-disagrees'],
    ],
    [
      'shifted with hall sensors',
      { motor: motorWith('hall'), map: 'A to V, B to W, C to U' },
      ['warning sensor-disagrees'],
    ],
    ['no hand', { hand: '' }, open],
    ['no direction of the motor', { motor: 'terminals: U, V, W' }, open],
    ['no direction of the gear', { gear: '?' }, []],
    [
      'four phases',
      {
        motor: 'terminals: U, V, W, X  turns: clockwise',
        controller: 'terminals: A, B, C, D',
        map: 'A to U, B to V, C to W, D to X',
      },
      open,
    ],
    [
      'two phases',
      { motor: 'terminals: U, V  turns: clockwise', controller: 'terminals: A, B', map: 'A to U, B to V' },
      open,
    ],
  ])('%s', (_what, facts, checks) => {
    expect(found(drive(facts))).toEqual(checks)
  })

  it('offers an exchange only where the motor has no position sensor', () => {
    const wrong = (sensor: string) => {
      const { findings } = findingsOf(drive({ motor: motorWith(sensor), hand: 'left-hand' }), allChecks)
      return findings.find(({ check }) => check === 'phases/turns-backward')
    }
    expect(wrong('none')?.todo).toContain('Connect A to V and B to U')
    expect(wrong('encoder')?.todo).toContain('do not exchange phases')
    expect(wrong('encoder')?.todo).not.toContain('Connect')
    expect(wrong('')?.todo).toMatch(
      /^State `position-sensor`.*Connect|State `position-sensor`.*connect A to V.*do not/,
    )
  })

  it('says what it takes for granted', () => {
    const { findings } = findingsOf(
      drive({ motor: motorWith(''), controller: 'terminals: A, B, C', map: 'A to V, B to U, C to W' }),
      allChecks,
    )
    const assumed = findings.find(({ check }) => check === 'phases/turns-backward')?.assumptions ?? []
    expect(assumed).toEqual([
      'the drive end of the motor faces the propeller',
      'going ahead, the controller puts out its phases in the order of its `terminals`',
      'the controller is not set to reverse the motor',
      'the motor has no position sensor',
    ])
  })

  it('with two motors is not guessed', () => {
    const text = drive({}).replace('  controller', '  motor n { power: 15 kW }\n  controller')
    expect(found(text)).toContain('information direction-unknown')
    expect(found(text)).not.toContain('error turns-backward')
  })

  it('is a signed speed, held against the hand', () => {
    const speeds = (facts: Drive) =>
      resultsIn(drive(facts))
        .results.filter(({ figure }) => figure.id.startsWith('phases/'))
        .map(({ amount, verdict }) => [Math.round((amount.value * 30) / Math.PI), verdict])
    expect(speeds({ gear: 'opposite' })).toEqual([
      [1500, undefined],
      [-600, 'outside'],
    ])
    expect(speeds({ gear: 'opposite', hand: 'left-hand' })).toEqual([
      [1500, undefined],
      [-600, 'within'],
    ])
    expect(speeds({ hand: '' })).toEqual([
      [1500, undefined],
      [1500, undefined],
    ])
    expect(speeds({ map: 'A to U, B to U, C to W' })).toEqual([])
  })

  it('is the other one in the mirrored boat', () => {
    const hands = fc.constantFrom('right-hand', 'left-hand')
    const gears = fc.constantFrom('', 'same', 'opposite')
    const maps = fc.constantFrom('A to U, B to V, C to W', 'A to V, B to U, C to W', 'A to W, B to U, C to V')
    fc.assert(
      fc.property(hands, gears, maps, (hand, gear, map) => {
        const other = hand === 'right-hand' ? 'left-hand' : 'right-hand'
        const isBackward = found(drive({ hand, gear, map })).includes('error turns-backward')
        expect(found(drive({ hand: other, gear, map })).includes('error turns-backward')).toBe(!isBackward)
      }),
    )
  })
})

describe('the screws of two drives', () => {
  const ferry = (
    screws: string,
    port: string,
    starboard: string,
    across = ['0.8 m port', '0.8 m starboard'],
  ) => {
    const one = (name: string, hand: string, side = '') =>
      `drive ${name} {\n  ${side && `across: ${side}\n  `}propeller { diameter: 480 mm${hand && `  turns: ${hand}`} }\n}\n`
    const job = `job "Ferry" { vessel: "Invented"${screws && `  screws: ${screws}`} }\n`
    return found(`${job}${one('a', port, across[0])}${one('b', starboard, across[1])}`)
  }
  const [left, right] = ['left-hand', 'right-hand']
  const wrong = ['error screws-disagree']
  const unknown = ['information screws-disagree']

  it.each([
    ['outward', left, right, undefined, []],
    ['outward', right, left, undefined, wrong],
    ['inward', right, left, undefined, []],
    ['inward', left, right, undefined, wrong],
    ['outward', right, left, ['0.8 m starboard', '0.8 m port'], []],
    ['outward', right, right, undefined, wrong],
    ['same-hand', right, right, undefined, []],
    ['same-hand', left, right, undefined, wrong],
    ['outward', left, right, [], unknown],
    ['outward', left, right, ['0 m', '0.8 m starboard'], unknown],
    ['outward', right, right, [], wrong],
    ['outward', left, right, ['0.8 m port', '0.7 m port'], wrong],
    ['outward', '', right, undefined, unknown],
    ['', left, right, undefined, ['information screws-not-stated']],
  ])('%s: %s, %s at %j is %j', (screws, port, starboard, across, checks) => {
    expect(ferry(screws, port, starboard, across)).toEqual(checks)
  })

  it('of one drive say that there is only one', () => {
    expect(found('job "x" { vessel: "Invented"  screws: outward }\ndrive a { }\n')).toEqual(unknown)
  })
})
