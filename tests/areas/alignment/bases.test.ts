// Which earlier reading one is held against: the last sound one of its shape. Where the machine goes is worked out from the line through its feet, at 180 mm
// and 560 mm; that readings of another shape cannot be compared, and that a soft foot makes a reading worthless: common practice, no source.
import { describe, expect, it } from 'vitest'
import { readingInLog } from '../../../server/src/areas/alignment/plans/log.ts'
import { moveDiscrepancy } from '../../../server/src/areas/alignment/plans/move-discrepancy.ts'
import { blockIn } from '../job-text.ts'
import { saidOf } from '../said-of.ts'

interface Pose {
  readonly slope: readonly [up: number, starboard: number]
  readonly offset: readonly [up: number, starboard: number]
}
const start: Pose = { slope: [-4, 2.4], offset: [0.4, -0.3] }
const flat = 1 / 3
const raised = ({ slope, offset }: Pose, aft: number, fwd: number): Pose => {
  const tilt = (fwd - aft) / 0.38
  return { slope: [slope[0] + tilt, slope[1]], offset: [offset[0] + aft - 0.18 * tilt, offset[1]] }
}
const topped = ({ slope: [v, h], offset: [z, y] }: Pose): Pose => ({ slope: [-v, h], offset: [-z, y] })

const mm = (value: number) => `${value.toFixed(2)} mm`
const reading = (name: string, { slope: [v, h], offset: [z, y] }: Pose, more = '') => `  reading ${name} {
    taken: 2026-03-0${name.slice(1)}
    gauge: 0.01 mm
    gaps: top ${mm(2 - 0.055 * v)}, starboard ${mm(2 - 0.055 * h)}, bottom ${mm(2 + 0.055 * v)}, port ${mm(2 + 0.055 * h)}
    offsets: top ${mm(z)}, starboard ${mm(y)}, bottom ${mm(-z)}, port ${mm(-y)}
    ${more}
  }
`
const move = (name: string, aft: string, fwd: string) =>
  `  move after ${name} { done: 2026-03-0${name.slice(1)}  aft-port: ${aft}  aft-stbd: ${aft}  fwd-port: ${fwd}  fwd-stbd: ${fwd} }\n`
const drive = (...log: readonly string[]) => `drive main {
  coupling { kind: flexible  flange-diameter: 125 mm  gauge-diameter: 110 mm  gap-variation: max 0.10 mm  offset: max 0.15 mm }
  bed {
    adjuster: stud-and-nuts
    thread: M16
    foot aft-port { from-coupling: 180 mm  across: 140 mm port }
    foot aft-stbd { from-coupling: 180 mm  across: 140 mm starboard }
    foot fwd-port { from-coupling: 560 mm  across: 140 mm port }
    foot fwd-stbd { from-coupling: 560 mm  across: 140 mm starboard }
  }
${log.join('')}}
`
const at = (text: string, name: string) => {
  const { block, lookup } = blockIn(text, `main.${name}`)
  return { against: readingInLog(block, lookup).against, discrepancy: moveDiscrepancy(block, lookup) }
}
const up = (name: string) => move(name, 'up 1 flat', 'up 3 flats')
const noted = raised(start, flat, 3 * flat)
const lifts = (aftStbd: number, fwd = 0.02) =>
  `lifts: aft-port 0.02 mm, aft-stbd ${mm(aftStbd)}, fwd-port ${mm(fwd)}, fwd-stbd ${mm(fwd)}`

describe.each(['hot: yes', 'parted-end: supported'])('a reading with %s in between', (other) => {
  it('leaves the ones before and after it held against each other', () => {
    const log = (last: Pose) =>
      drive(reading('r1', start), up('r1'), reading('r2', noted, other), reading('r3', last))
    expect(at(log(noted), 'r3')).toMatchObject({ against: { since: 'r1', mismatch: { noise: true } } })
    expect(at(log(topped(noted)), 'r3').discrepancy?.words).toContain(
      'top and bottom are swapped in this reading',
    )
    expect(saidOf(log(topped(noted))).stepped).toBe(false)
  })
  it('takes nothing from the moves noted before and after it', () => {
    const wrong = raised(start, -2 * flat, -6 * flat)
    const text = drive(
      reading('r1', start),
      up('r1'),
      reading('r2', noted, other),
      up('r2'),
      reading('r3', wrong),
    )
    expect(at(text, 'r3').discrepancy?.words).toContain('the thread is left-hand')
  })
  it('is held against the last one of its own shape', () => {
    const text = drive(
      reading('r1', start, other),
      up('r1'),
      reading('r2', noted),
      reading('r3', topped(noted), other),
    )
    expect(at(text, 'r2').against).toMatchObject({
      type: expect.stringMatching(/cooled|end-freed/),
      since: 'r1',
    })
    expect(at(text, 'r3')).toMatchObject({ against: { since: 'r1' }, discrepancy: { withholds: true } })
  })
})

it('a boat that was launched and hauled out again is not held against what was read before', () => {
  const text = drive(
    reading('r1', start),
    reading('r2', start, 'afloat: yes'),
    reading('r3', topped(start), 'afloat: no'),
  )
  expect(at(text, 'r3')).toEqual({ against: { type: 'hauled-out', since: 'r2' }, discrepancy: undefined })
})

it.each([
  ['no', 'yes', 'no', 'hauled-out'],
  ['no', 'yes', 'yes', 'cooled'],
  ['yes', 'no', 'no', 'cooled'],
])('neither is it where the one in between was hot: afloat %s, %s, %s', (first, hot, last, type) => {
  const text = drive(
    reading('r1', start, `afloat: ${first}`),
    reading('r2', start, `afloat: ${hot}  hot: yes`),
    reading('r3', topped(start), `afloat: ${last}`),
  )
  expect(at(text, 'r3')).toEqual({ against: { type, since: 'r2' }, discrepancy: undefined })
})

it('an exact copy of an older reading is named, and gives no steps', () => {
  const moved = raised(start, flat, 2 * flat)
  const text = drive(
    reading('r1', start),
    move('r1', 'up 1 flat', 'up 2 flats'),
    reading('r2', moved),
    reading('r3', start),
  )
  const { discrepancy } = at(text, 'r3')
  expect(discrepancy?.words).toContain('the figures are exactly those of r1: were they copied from it?')
  expect(discrepancy?.words).toContain(
    'If the figures were copied from r1, replace them with what is read now.',
  )
  expect(saidOf(text).stepped).toBe(false)
  // One digit off, it is no copy; put back, it agrees with the reading before.
  expect(
    at(text.replace(/(reading r3[\s\S]*?starboard )1.87/, '$11.88'), 'r3').discrepancy?.words,
  ).not.toContain('copied')
  const back = text.replace('  reading r3', `${move('r2', 'down 1 flat', 'down 2 flats')}  reading r3`)
  expect(at(back, 'r3').discrepancy?.words ?? '').not.toContain('copied')
})

describe('a reading with a soft foot', () => {
  const mend = '  move after r1 { done: 2026-03-01  aft-stbd: up 1 flat }\n'
  it('is not held against another, nor another against it', () => {
    const text = drive(reading('r1', start, lifts(0.3)), mend, reading('r2', start, lifts(0.02)))
    expect(at(text, 'r2')).toEqual({ against: undefined, discrepancy: undefined })
    expect(saidOf(text).stepped).toBe(true)
    const again = drive(reading('r1', start), up('r1'), reading('r2', start, lifts(0.3)))
    expect(at(again, 'r2')).toEqual({ against: undefined, discrepancy: undefined })
  })
  it('ends what could be compared over it, once the foot is mended', () => {
    const text = drive(
      reading('r1', start),
      reading('r2', start, lifts(0.3)),
      mend.replace('r1', 'r2').replace('03-01', '03-02'),
      reading('r3', start, lifts(0.02)),
    )
    expect(at(text, 'r3')).toEqual({ against: undefined, discrepancy: undefined })
  })
})

it('a foot that lifts show to stand did not fail to follow: its move was not made as noted', () => {
  const made = move('r1', 'up 2 flats', 'up 6 flats')
  const hangs = raised(start, 2 * flat, 3 * flat)
  const log = (...more: readonly string[]) => drive(reading('r1', start), made, ...more)
  for (const text of [
    log(reading('r2', hangs, lifts(0.02))),
    log(reading('r2', hangs), reading('r3', hangs, lifts(0.02))),
    log(reading('r2', hangs, lifts(0.02)), reading('r3', hangs)),
  ]) {
    const name = text.includes('reading r3') ? 'r3' : 'r2'
    const { discrepancy } = at(text, name)
    expect(discrepancy?.words).toContain('the move at fwd-port or fwd-stbd was not made as noted')
    expect(discrepancy?.words).toContain('write it in the log as it was made')
    expect(discrepancy?.words).not.toContain('did not follow')
    expect(discrepancy?.withholds).toBe(true)
  }
  // Of one of both only.
  const one = log(reading('r2', hangs, 'lifts: fwd-port 0.02 mm'))
  expect(at(one, 'r2').discrepancy?.words).toContain('Most likely fwd-stbd did not follow')
})
