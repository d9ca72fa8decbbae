// What a log of moves can say that cannot be. A plane through four feet is geometry; how far a foot may stand off it, and when lifts are enough: common
// practice, no source.
import { describe, expect, it } from 'vitest'
import { correctionOf, withhold } from '../../../server/src/areas/alignment/plans/correction.ts'
import { correctionText } from '../../../server/src/areas/alignment/plans/words.ts'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf } from '../../checks/marks.ts'
import { blockIn } from '../job-text.ts'
import { saidOf } from '../said-of.ts'

const drive = (log: string, adjuster = 'adjuster: stud-and-nuts\n    thread: M16') => `drive main {
  coupling { kind: flexible  flange-diameter: 125 mm  gauge-diameter: 110 mm  gap-variation: max 0.10 mm  offset: max 0.15 mm }
  bed {
    ${adjuster}
    foot aft-port { from-coupling: 180 mm  across: 140 mm port }
    foot aft-stbd { from-coupling: 180 mm  across: 140 mm starboard }
    foot fwd-port { from-coupling: 560 mm  across: 140 mm port }
    foot fwd-stbd { from-coupling: 560 mm  across: 140 mm starboard }
  }
${log}}
`
const reading = (name: string, day: string, more = '') => `  reading ${name} {
    taken: 2026-03-${day}
    gauge: 0.02 mm
    gaps: top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm
    offsets: top 0.06 mm, starboard -0.02 mm, bottom -0.05 mm, port 0.03 mm
    ${more}
  }
`
const move = (feet: string, done = 'done: 2026-03-04') => `  move after a { ${done}  ${feet} }\n`
const found = (text: string, check: string) =>
  findingsOf(text, allChecks).findings.filter((finding) => finding.check === check)

describe('feet out of plane', () => {
  const id = 'alignment/feet-out-of-plane'
  const corner = 'fwd-port: up 7 flats  fwd-stbd: none  aft-port: none  aft-stbd: up 2 flats'
  const a = reading('a', '04')

  it('are named, with how far, and the plan waits', () => {
    const [one, ...more] = found(drive(a + move(corner)), id)
    expect(more).toEqual([])
    // Nine flats of twist, 3 mm, shared by four feet.
    expect(one?.detail).toContain(
      'aft-stbd and fwd-port 0.75 mm above and aft-port and fwd-stbd 0.75 mm below',
    )
    expect(one?.plan).toBe('waits')
    expect(saidOf(drive(a + move(corner) + reading('b', '05'))).stepped).toBe(false)
  })

  it.each([
    ['a roll of the whole machine', move('fwd-port: up 7 flats  aft-port: up 7 flats')],
    ['a tilt', move('fwd-port: up 7 flats  fwd-stbd: up 7 flats')],
    ['half a step of the nuts', move('fwd-port: up 1 flat')],
    ['two moves that complete each other', move('fwd-port: up 7 flats') + move('fwd-stbd: up 7 flats')],
    ['a machine that slid alone', move('fwd-port: port 2 mm  fwd-stbd: port 2 mm')],
    [
      'lifts read since',
      move(corner) +
        reading('b', '05', 'lifts: aft-port 0.01 mm, aft-stbd 0.01 mm, fwd-port 0.01 mm, fwd-stbd 0.01 mm'),
    ],
    [
      'a later move that brings them into plane',
      move(corner) +
        reading('b', '05') +
        move('fwd-stbd: up 7 flats  aft-port: up 2 flats').replace('after a', 'after b'),
    ],
  ])('are no finding with %s', (_, log) => {
    expect(found(drive(a + log), id)).toEqual([])
  })

  it('stay so through readings without lifts and moves of the whole machine', () => {
    const whole = 'aft-port: up 1 flat  aft-stbd: up 1 flat  fwd-port: up 1 flat  fwd-stbd: up 1 flat'
    const log =
      a + move(corner) + reading('b', '05') + move(whole).replace('after a', 'after b') + reading('c', '06')
    const [one] = found(drive(log), id)
    expect(one?.message).toContain('Together, these moves')
    expect(one?.related).toHaveLength(1)
  })

  const lifts = (...names: readonly string[]) => `lifts: ${names.map((name) => `${name} 0.01 mm`).join(', ')}`
  it.each([
    [1, ['aft-port']],
    [1, ['aft-port', 'aft-stbd', 'fwd-port']],
    [0, ['aft-port', 'aft-stbd', 'fwd-port', 'fwd-stbd']],
  ])('are found %i times where the lifts read since are of %j', (times, names) => {
    expect(found(drive(a + move(corner) + reading('b', '05', lifts(...names))), id)).toHaveLength(times)
  })

  it('are cleared by the lifts of all of them, read one after another', () => {
    const two = reading('b', '05', lifts('aft-port', 'fwd-stbd'))
    const others = reading('c', '06', lifts('aft-stbd', 'fwd-port'))
    expect(found(drive(a + move(corner) + two), id)).toHaveLength(1)
    expect(found(drive(a + move(corner) + two + others), id)).toEqual([])
  })

  it('are held against 0.05 mm where shims set the heights', () => {
    const by = (height: string) => drive(a + move(`fwd-port: up ${height}`), 'adjuster: shims')
    expect(found(by('0.20 mm'), id)).toEqual([])
    expect(found(by('0.24 mm'), id)[0]?.limit).toBe('at most 0.05 mm')
  })
})

// Feet at one distance from the coupling go sideways together, for a machine that turns a little about an upright axis: geometry. 0.05 mm: common
// practice, no source.
describe('feet that slid apart', () => {
  const id = 'alignment/feet-slid-apart'
  const a = reading('a', '04')

  it('are named, and the plan waits', () => {
    const text = drive(a + move('aft-port: starboard 2 mm  aft-stbd: none  fwd-port: none  fwd-stbd: none'))
    expect(found(text, id)[0]?.detail).toContain(
      'aft-port 1.00 mm to starboard and aft-stbd 1.00 mm to port of where the other feet take it',
    )
    expect(found(text, id)[0]?.message).toContain('slides the feet 1.00 mm apart')
    expect(found(text, id)[0]?.plan).toBe('waits')
    const read = drive(`${a + move('aft-port: starboard 2 mm')}${reading('b', '05')}`)
    expect(saidOf(read).stepped).toBe(false)
  })

  it('stay a finding once the next reading has lifts: those show nothing sideways', () => {
    const all = 'lifts: aft-port 0.01 mm, aft-stbd 0.01 mm, fwd-port 0.01 mm, fwd-stbd 0.01 mm'
    expect(found(drive(a + move('aft-port: port 2 mm') + reading('b', '05', all)), id)).toHaveLength(1)
  })

  it.each([
    [
      'all feet the same',
      move('aft-port: port 2 mm  aft-stbd: port 2 mm  fwd-port: port 2 mm  fwd-stbd: port 2 mm'),
    ],
    ['one end', move('fwd-port: port 2 mm  fwd-stbd: port 2 mm')],
    ['half the limit each way, and a hair less', move('fwd-port: port 0.09 mm')],
    ['two moves that complete each other', move('fwd-port: port 1 mm') + move('fwd-stbd: port 1 mm')],
  ])('are no finding with %s', (_, log) => {
    expect(found(drive(a + log), id)).toEqual([])
  })

  it('are one with 0.11 mm at one foot of an end', () => {
    expect(found(drive(a + move('fwd-port: port 0.11 mm')), id)).toHaveLength(1)
  })
})

// How far a foot can go is what the job says of it; M16 rises 2 mm a turn (ISO 261).
describe('a move beyond the room of a foot', () => {
  const id = 'alignment/move-beyond-room'
  const room = (facts: string, log: string, adjuster?: string) =>
    drive(reading('a', '04') + log, adjuster).replaceAll(
      /across: 140 mm \w+/g,
      (across) => `${across} ${facts}`,
    )
  const all = (by: string) => move(`aft-port: ${by}  aft-stbd: ${by}  fwd-port: ${by}  fwd-stbd: ${by}`)

  it.each([
    ['travel-up: 1 mm', 'up 8 flats', '2.67 mm up, travel-up is 1.00 mm'],
    ['travel-down: 1 mm', 'down 8 flats', '2.67 mm down, travel-down is 1.00 mm'],
    ['hole-clearance: 0.5 mm', 'starboard 3 mm', '3.00 mm to starboard, hole-clearance is 0.50 mm'],
    ['hole-clearance: 0.5 mm', 'port 0.53 mm', '0.53 mm to port, hole-clearance is 0.50 mm'],
  ])('%s is found, and the plan waits: %s', (facts, by, words) => {
    const [one, ...more] = found(room(facts, all(by)), id)
    expect(more).toEqual([])
    expect([one?.severity, one?.plan]).toEqual(['warning', 'waits'])
    expect(one?.detail).toContain(`aft-port ${words}`)
    expect(saidOf(room(facts, all(by) + reading('b', '05'))).stepped).toBe(false)
  })

  it('is found by the pack on shims, and by no pack on studs', () => {
    const down = all('down 0.6 mm')
    expect(found(room('pack: 0.5 mm', down, 'adjuster: shims'), id)[0]?.detail).toContain('pack is 0.50 mm')
    expect(found(room('pack: 0.5 mm', down), id)).toEqual([])
  })

  it.each([
    ['nothing stated', '', all('up 8 flats')],
    ['as far as it can', 'travel-up: 1 mm hole-clearance: 0.5 mm', all('up 3 flats, port 0.5 mm')],
    ['the other way', 'travel-up: 1 mm', all('down 8 flats')],
    ['two moves that each stay inside', 'travel-up: 1 mm', all('up 3 flats') + all('up 2 flats')],
  ])('is none with %s', (_, facts, log) => {
    expect(found(room(facts, log), id)).toEqual([])
  })
})

describe('the date of a move', () => {
  const id = 'alignment/move-misdated'
  const log = (done: string) =>
    drive(
      reading('a', '04') +
        move('fwd-port: up 1 flat  fwd-stbd: up 1 flat', `done: 2026-03-${done}`) +
        reading('b', '06'),
    )
  it.each([
    ['01', 'before the reading', 'That reading is a.'],
    ['07', 'after the reading', 'That reading is b.'],
  ])('that contradicts its place is found, and the plan waits: %s', (day, words, detail) => {
    expect(found(log(day), id)[0]).toMatchObject({ message: expect.stringContaining(words), detail })
    expect(saidOf(log(day)).stepped).toBe(false)
  })
  it('is none between the two, or on the day of either', () => {
    for (const day of ['04', '05', '06']) expect(found(log(day), id)).toEqual([])
  })
})

describe('a move noted twice', () => {
  const id = 'alignment/move-noted-twice'
  const up = 'fwd-port: up 1 flat  fwd-stbd: up 1 flat'
  const a = reading('a', '04')
  it('is found on the second, without a date, with the same, or with one of them undated', () => {
    for (const [one, two] of [
      ['', ''],
      ['done: 2026-03-04', 'done: 2026-03-04'],
      ['done: 2026-03-04', ''],
    ]) {
      const text = drive(
        a + move(up, one) + move('fwd-stbd: up 1 flat  aft-port: none  fwd-port: up 1 flat', two),
      )
      expect(found(text, id).map(({ message }) => message)).toEqual([
        expect.stringMatching(/^This (?:planned )?move after a is noted (?:twice|as made)/),
      ])
      expect(saidOf(text).stepped).toBe(false)
    }
  })
  it.each([
    ['other feet', move(up) + move('aft-port: up 1 flat  aft-stbd: up 1 flat')],
    ['another date', move(up, 'done: 2026-03-04') + move(up, 'done: 2026-03-05')],
    ['nothing moved', move('fwd-port: none') + move('fwd-port: none')],
  ])('is none with %s', (_, log) => {
    expect(found(drive(a + log), id)).toEqual([])
  })
  it('is none where the next reading shows that both were made', () => {
    // Two flats at the forward end, 0.667 mm over 380 mm: 1.75 mrad, 0.193 mm on 110 mm, and the flange 0.316 mm down.
    const b = reading('b', '05')
      .replace('top 1.92', 'top 1.82')
      .replace('bottom 1.66', 'bottom 1.76')
      .replace('top 0.06', 'top -0.26')
      .replace('bottom -0.05', 'bottom 0.26')
    expect(found(drive(a + move(up) + move(up) + b), id)).toEqual([])
    expect(found(drive(a + move(up) + move(up) + reading('b', '05')), id)).toHaveLength(1)
  })
})

it('a reading within its limits that is in doubt is not said to be left alone', () => {
  const text = drive(
    reading('a', '04')
      .replaceAll(/\d\.\d\d mm/g, '0.00 mm')
      .replace('0.00 mm\n    gaps', '0.02 mm\n    gaps'),
  )
  const { block, lookup } = blockIn(text, 'main.a')
  const outcome = correctionOf(block, lookup)
  if (!outcome.ok) return expect.fail(outcome.fault.words)
  expect(outcome.value.verdict).toBe('within')
  expect(correctionText(outcome.value, 'metric')).toContain('leave the feet alone')
  expect(correctionText(withhold(outcome.value, 'another-effect'), 'metric')).not.toContain(
    'leave the feet alone',
  )
})
