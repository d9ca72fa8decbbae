// The move before a reading, written as the reading says that it was made. What a move does is the line through the feet; that the log is kept as the
// work was done is common practice, no source.
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf } from '../../checks/marks.ts'
import { fixed, titles } from '../../checks/offers.ts'
import { feet, flat, job } from './move-discrepancy-jobs.ts'

const discrepancy = 'alignment/move-had-another-effect'
const write = 'Write the move as it was made'

const fires = (text: string) =>
  findingsOf(text, allChecks).findings.some(({ check }) => check === discrepancy)

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
      ['  }\n  move after r1 {\n    done:', '    aft-port: up 1 flat, starboard 0.2 mm\n'],
    ],
  ])('is offered: %s', (_, text, lines) => {
    expect(fires(text)).toBe(true)
    const after = fixed(text, discrepancy, write)
    for (const line of lines) expect(after).toContain(line)
    expect(fires(after)).toBe(false)
  })

  it.each([
    ['nothing moved', job(noted, [0, 0])],
    ['all nuts the wrong way, or both readings mirrored', job(noted, [-flat, -2 * flat], [0.2, 0.5])],
    [
      'there are two moves, and either may be the wrong one',
      job(noted, [flat, -2 * flat], [0.2, 0.5]).replace(
        '  reading r2',
        '  move after r1 { done: 2026-03-04  aft-port: none }\n  reading r2',
      ),
    ],
    ['nothing explains it', job(noted, [3, -2], [1, -4])],
  ])('is not offered: %s', (_, text) => {
    expect(fires(text)).toBe(true)
    expect(titles(text, discrepancy)).not.toContain(write)
  })
})
