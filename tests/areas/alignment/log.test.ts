import { describe, expect, it } from 'vitest'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf } from '../../checks/marks.ts'

// What the log of a drive can say wrongly. The language itself, and common practice, no source.

const bed = `  bed {
    adjuster: stud-and-nuts
    foot aft { from-coupling: 180 mm  across: 140 mm port }
    foot fwd { from-coupling: 560 mm  across: 140 mm starboard }
  }
`
const readingOf = (
  name: string,
  day: string,
  gaps = 'top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm',
) => `  reading ${name} { taken: 2026-03-${day}  gauge: 0.02 mm\n    gaps: ${gaps}\n  }\n`
const coupling = '  coupling { flange-diameter: 125 mm }\n'
const driveOf = (inside: string) => `drive main {\n${inside}}\n`

/** Ids of the alignment checks that fire, with the text each stands at. */
function found(text: string): readonly (readonly [string, string])[] {
  return findingsOf(text, allChecks)
    .findings.filter(({ check }) => check.startsWith('alignment/'))
    .map(({ check, at }) => [check, at.section.text.slice(at.span.start, at.span.end)] as const)
}
const ids = (text: string) => found(text).map(([id]) => id)

describe('a move', () => {
  it('of a foot is held against the bed only where the feet are known', () => {
    const move = '  move after dry-1 { done: 2026-03-04  forward: up 2 flats  aft: none }\n'
    const log = readingOf('dry-1', '04') + move
    expect(found(driveOf(bed + log))).toContainEqual(['alignment/move-of-unknown-foot', 'forward'])
    for (const unknown of ['', '  bed { adjuster: shims }\n', bed.replace('foot aft', 'foot')])
      expect(ids(driveOf(unknown + log))).not.toContain('alignment/move-of-unknown-foot')
  })

  it('is told once where several follow the last reading, and not at all where the reading is unknown', () => {
    const twice = `${readingOf('dry-1', '04')}  move after dry-1 { done: 2026-03-04  fwd: up 1 flat }\n  move after dry-1 { done: 2026-03-04  fwd: up 2 flats }\n`
    expect(ids(driveOf(bed + twice)).filter((id) => id === 'alignment/no-reading-after-move')).toHaveLength(1)
    const lost = driveOf(
      `${bed}${readingOf('dry-1', '04')}  move after dry-9 { done: 2026-03-04  fwd: up 1 flat }\n`,
    )
    expect(found(lost)).toContainEqual(['alignment/move-after-unknown-reading', 'dry-9'])
    expect(ids(lost)).not.toContain('alignment/no-reading-after-move')
  })

  it('offers the nearest reading', () => {
    const text = driveOf(
      `${bed}${readingOf('dry-1', '04')}  move after dry1 { done: 2026-03-04  fwd: up 1 flat }\n`,
    )
    const finding = findingsOf(text, allChecks).findings.find(({ check }) =>
      check.endsWith('unknown-reading'),
    )
    expect(finding).toMatchObject({ detail: expect.stringContaining('dry-1'), data: { nearest: 'dry-1' } })
  })

  it('of a foot is not none and something else', () => {
    for (const value of ['none, up 1 flat', 'up 1 flat, none', 'none, none']) {
      const text = driveOf(
        `${bed}${readingOf('dry-1', '04')}  move after dry-1 { done: 2026-03-04  fwd: ${value} }\n`,
      )
      const refused = findingsOf(text, allChecks).findings.filter(({ severity }) => severity === 'error')
      expect(refused.map(({ check }) => check)).toContain('job/value-not-allowed')
    }
  })
})

describe('feet', () => {
  const feetAt = (aft: string, fwd: string) =>
    driveOf(bed.replace('140 mm port', aft).replace('140 mm starboard', fwd))
  it.each([
    ['140 mm port', '120 mm port'],
    ['140 mm starboard', '140 mm starboard'],
    ['0 mm', '0 mm'],
    ['0 mm', '140 mm port'],
  ])('at %s and %s stand on one side', (aft, fwd) => {
    expect(ids(feetAt(aft, fwd))).toContain('alignment/feet-on-one-side')
  })
  it('whose side could not be read are not judged', () => {
    expect(ids(feetAt('140 mm port', '140 mm'))).not.toContain('alignment/feet-on-one-side')
    expect(ids(feetAt('140 mm port', '140 mm starboard'))).not.toContain('alignment/feet-on-one-side')
  })
  it.each(['done', 'by'])('cannot be called %s', (name) => {
    expect(found(driveOf(bed.replace('foot aft', `foot ${name}`)))).toContainEqual([
      'alignment/foot-name-taken',
      `foot ${name}`,
    ])
  })
})

describe('a number that nothing can be worked out from', () => {
  const far = bed.replace('560 mm', '20 m')
  const loose = 'top 9.00 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm'
  it('is marked at its own fact, once for all readings', () => {
    const text = driveOf(coupling + far + readingOf('dry-1', '04', loose) + readingOf('dry-2', '05', loose))
    expect(found(text).filter(([id]) => id === 'alignment/gaps-impossible')).toEqual([
      ['alignment/gaps-impossible', '20 m'],
    ])
  })
  it('is marked at the gaps where the fact stands in another block', () => {
    const text = far.replace(/^ {2}/gm, '') + driveOf(coupling + readingOf('dry-1', '04', loose))
    const finding = findingsOf(text, allChecks).findings.find(
      ({ check }) => check === 'alignment/gaps-impossible',
    )
    expect(finding?.related?.[0]?.message).toBe('the from-coupling')
    expect(found(text)).toContainEqual(['alignment/gaps-impossible', loose])
  })
})
