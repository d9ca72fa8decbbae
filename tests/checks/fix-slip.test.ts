// The move before a reading, written as the reading says that it was made. What a move does is the line through the feet; that the log is kept as the
// work was done is common practice, no source.
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../server/src/checks/index.ts'
import { findingsOf } from './marks.ts'
import { fixed, titles } from './offers.ts'

const slip = 'alignment/move-had-another-effect'
const write = 'Write the move as it was made'

/** Feet 180 mm and 560 mm forward; the machine goes up by these at both ends and to starboard, mm. */
const job = (lines: readonly string[], [aft, fwd]: readonly [number, number], [aftY, fwdY] = [0, 0]) => {
  const [tv, th] = [(fwd - aft) / 0.38 - 4, (fwdY - aftY) / 0.38 + 2.4]
  const [oz, oy] = [0.4 + aft - 0.18 * (tv + 4), -0.3 + aftY - 0.18 * (th - 2.4)]
  const reading = (name: string, day: string, of: Record<'tv' | 'th' | 'oz' | 'oy', number>) => {
    const mm = (value: number) => `${value.toFixed(2)} mm`
    return `  reading ${name} {
    taken: 2026-03-${day}
    gauge: 0.01 mm
    gaps: top ${mm(2 - 0.055 * of.tv)}, starboard ${mm(2 - 0.055 * of.th)}, bottom ${mm(2 + 0.055 * of.tv)}, port ${mm(2 + 0.055 * of.th)}
    offsets: top ${mm(of.oz)}, starboard ${mm(of.oy)}, bottom ${mm(-of.oz)}, port ${mm(-of.oy)}
  }
`
  }
  return `drive main {
  coupling { kind: flexible  flange-diameter: 125 mm  gauge-diameter: 110 mm  gap-variation: max 0.10 mm  offset: max 0.15 mm }
  bed {
    adjuster: stud-and-nuts
    thread: M16
    foot aft-port { from-coupling: 180 mm  across: 140 mm port }
    foot aft-stbd { from-coupling: 180 mm  across: 140 mm starboard }
    foot fwd-port { from-coupling: 560 mm  across: 140 mm port }
    foot fwd-stbd { from-coupling: 560 mm  across: 140 mm starboard }
  }
${reading('r1', '04', { tv: -4, th: 2.4, oz: 0.4, oy: -0.3 })}  move after r1 {
${lines.map((line) => `    ${line}\n`).join('')}  }
${reading('r2', '05', { tv, th, oz, oy })}}
`
}
const feet = (aft: string, fwd: string) =>
  ['port', 'stbd'].flatMap((side) => [`aft-${side}: ${aft}`, `fwd-${side}: ${fwd}`])
const flat = 1 / 3
const fires = (text: string) => findingsOf(text, allChecks).findings.some(({ check }) => check === slip)

describe('the move as it was made', () => {
  const noted = feet('up 1 flat, starboard 0.2 mm', 'up 2 flats, starboard 0.5 mm')
  it.each([
    [
      'forward nuts the wrong way',
      job(noted, [flat, -2 * flat], [0.2, 0.5]),
      ['aft-port: up 1 flat, starboard 0.2 mm', 'fwd-port: down 2 flats, starboard 0.5 mm'],
    ],
    [
      'heights not set',
      job(noted, [0, 0], [0.2, 0.5]),
      ['aft-port: starboard 0.2 mm', 'fwd-stbd: starboard 0.5 mm'],
    ],
    ['sideways not done', job(noted, [flat, 2 * flat]), ['aft-port: up 1 flat\n', 'fwd-stbd: up 2 flats\n']],
    [
      'made twice over',
      job(noted, [2 * flat, 4 * flat], [0.4, 1]),
      ['  }\n  move after r1 {\n    aft-port: up 1 flat, starboard 0.2 mm\n'],
    ],
  ])('is offered: %s', (_, text, lines) => {
    expect(fires(text)).toBe(true)
    const after = fixed(text, slip, write)
    for (const line of lines) expect(after).toContain(line)
    expect(fires(after)).toBe(false)
  })

  it.each([
    ['nothing moved', job(noted, [0, 0])],
    ['all nuts the wrong way, or both readings mirrored', job(noted, [-flat, -2 * flat], [0.2, 0.5])],
    ['nothing explains it', job(noted, [3, -2], [1, -4])],
  ])('is not offered: %s', (_, text) => {
    expect(fires(text)).toBe(true)
    expect(titles(text, slip)).not.toContain(write)
  })
})
