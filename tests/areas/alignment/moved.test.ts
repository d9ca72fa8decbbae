import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Correction, correctionOf } from '../../../server/src/areas/alignment/plans/correction.ts'
import { lastReading, moveWithoutReading } from '../../../server/src/areas/alignment/plans/moves.ts'
import { planJson } from '../../../server/src/areas/alignment/plans/plan-json.ts'
import { correctionMarkdown, correctionText } from '../../../server/src/areas/alignment/plans/words.ts'
import { computedMarkdown } from '../../../server/src/editor/hover/computed.ts'
import { Analysis } from '../../../server/src/job/analysis.ts'
import { openDocument } from '../../../server/src/job/document.ts'
import { linkFile } from '../../../server/src/job/files.ts'
import { blockIn } from '../job-text.ts'

// Common practice, no source, throughout: a machine that was moved is read again before it is moved further, and readings that
// contradict each other move nothing.

const feet = `foot aft-port { from-coupling: 180 mm  across: 140 mm port }
    foot aft-stbd { from-coupling: 180 mm  across: 140 mm starboard }
    foot fwd-port { from-coupling: 560 mm  across: 140 mm port }
    foot fwd-stbd { from-coupling: 560 mm  across: 140 mm starboard }`
const loose = 'top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm'

const readingOf = (name: string, taken: string, gaps = loose, gauge = '0.02 mm'): string =>
  `  reading ${name} {
    ${taken === '' ? '' : `taken: ${taken}`}
    gauge: ${gauge}
    gaps: ${gaps}
    offsets: top 0.06 mm, starboard -0.02 mm, bottom -0.05 mm, port 0.03 mm
  }
`
const driveOf = (
  log: string,
  bed = `adjuster: stud-and-nuts\n    thread: M16\n    ${feet}`,
): string => `drive main {
  coupling { flange-diameter: 125 mm  gauge-diameter: 110 mm  gap-variation: max 0.10 mm  offset: max 0.15 mm }
  bed {
    ${bed}
  }
${log}}
`

function correct(text: string, reading = 'dry-1'): Correction {
  const { block, lookup } = blockIn(text, `main.${reading}`)
  const outcome = correctionOf(block, lookup)
  if (!outcome.ok) throw new Error(outcome.fault.words)
  return outcome.value
}

const drive = (log: string) => blockIn(driveOf(log), 'main').block
const said = (c: Correction): readonly string[] => [
  correctionText(c, 'metric'),
  correctionMarkdown(c, 'metric'),
]

describe('a machine that was moved after the reading', () => {
  const first = readingOf('dry-1', '2026-03-04')
  const move = '  move after dry-1 { done: 2026-03-04  fwd-port: up 2 flats  fwd-stbd: up 2 flats }\n'

  it('is to be read again: verdict and corrections stand, the steps do not', () => {
    const before = correct(driveOf(first))
    const after = correct(driveOf(first + move))
    expect(before.movedSince).toBe(false)
    expect(after).toMatchObject({ movedSince: true, withheld: 'moved-since', verdict: 'outside' })
    expect(after.feet.map((foot) => foot.vertical)).toEqual(before.feet.map((foot) => foot.vertical))
    for (const words of said(after)) {
      expect(words).toContain('The machine was moved after this reading, so it gives no moves. Read again')
      expect(words).toContain('up 1.27 ± 0.08 mm')
      expect(words).not.toMatch(/flat|turn the lower nut (?:counter|clock)/)
      expect(words).not.toContain('The next reading should show')
    }
    expect(planJson(after)).toMatchObject({ movedSince: true, withheld: 'moved-since', predicted: null })
    expect(planJson(before)).toMatchObject({ movedSince: false, withheld: null })
  })

  it('is said in the hover on the reading and on the bed', () => {
    const file = linkFile('a.wright', openDocument(driveOf(first + move)), () => undefined)
    const analysis = new Analysis()
    analysis.begin()
    const all = analysis.blocks(file)[0]?.children ?? []
    for (const kind of ['bed', 'reading']) {
      const block = all.find((b) => b.kind === kind)
      expect(block && computedMarkdown(block, { analysis, file })).toContain('was moved after this reading')
    }
  })

  it('goes by the reading that follows, and says which that is', () => {
    const log = first + move + readingOf('dry-2', '2026-03-05')
    expect(correct(driveOf(log), 'dry-2')).toMatchObject({ movedSince: false })
    expect(said(correct(driveOf(log))).join()).toContain('use the last reading, dry-2')
    expect(lastReading(drive(log))?.name).toBe('dry-2')
    expect(moveWithoutReading(drive(log))).toBeUndefined()
    const again = `${log}  move after dry-2 { done: 2026-03-04  fwd-port: up 1 flat }\n`
    expect(correct(driveOf(again), 'dry-2').movedSince).toBe(true)
    expect(moveWithoutReading(drive(again))?.about?.text).toBe('dry-2')
  })

  it('counts a move after a later reading, and one that was done on a later day', () => {
    const later = readingOf('dry-0', '2026-03-03') + first + move
    expect(correct(driveOf(later), 'dry-0').movedSince).toBe(true)
    const done = `${first}${readingOf('dry-2', '2026-03-05')}  move after dry-1 { done: 2026-03-06  fwd-port: up 1 flat }\n`
    expect(correct(driveOf(done), 'dry-2').movedSince).toBe(true)
    expect(moveWithoutReading(drive(done))).toBeDefined()
  })

  it('takes a reading without a date as of the day of the one before it', () => {
    const log = first + move + readingOf('dry-2', '')
    expect(lastReading(drive(log))?.name).toBe('dry-2')
    expect(correct(driveOf(log), 'dry-2').movedSince).toBe(false)
  })

  it('leaves alone a reading no move is after', () => {
    expect(
      correct(driveOf(`${first}  move after dry-9 { done: 2026-03-04  fwd-port: up 1 flat }\n`)).movedSince,
    ).toBe(false)
  })
})

describe('readings that were repeated', () => {
  // A value read to a step is known to half a step (JCGM 100 F.2.2.1): two of one gap lie a step apart at most.
  it('differ by one step of the gauge at most, else nothing is moved', () => {
    const within = correct(driveOf(readingOf('dry-1', '2026-03-04', `${loose}, top 1.90 mm`)))
    expect(within).toMatchObject({ contradictory: false })
    expect(within.repeats).toBeUndefined()
    const apart = correct(driveOf(readingOf('dry-1', '2026-03-04', `${loose}, 360 deg 1.80 mm`)))
    expect(apart).toMatchObject({ contradictory: true, withheld: 'contradictory' })
    expect(apart.repeats?.gaps?.difference).toBeCloseTo(0.12e-3, 9)
    for (const words of said(apart)) expect(words).toContain('read more than once at top differ by 0.12 mm')
  })
})

describe('moves that the gauge cannot see', () => {
  const level = 'top 1.80 mm, starboard 1.80 mm, bottom 1.80 mm, port 1.80 mm'
  const tight = (log: string) => driveOf(log).replace('max 0.10 mm', 'max 0.01 mm')

  // ISO 14253-1: within and outside are each proven beyond U; between them nothing is, and U is larger than every move.
  it('are not worth making where nothing is proven', () => {
    const c = correct(
      tight(readingOf('dry-1', '2026-03-04', level)).replace(
        /offsets: .*/,
        'offsets: top 0 mm, starboard 0 mm, bottom 0 mm, port 0 mm',
      ),
    )
    expect(c).toMatchObject({ verdict: 'undecided', withheld: 'unsure' })
    for (const words of said(c)) {
      expect(words).toContain('Move nothing until a finer gauge')
      expect(words).toContain('(U is larger than the move)')
    }
  })

  it('are marked at their foot and plane, and kept where the machine is proven outside', () => {
    const c = correct(
      driveOf(
        readingOf(
          'dry-1',
          '2026-03-04',
          'top 1.92 mm, starboard 1.81 mm, bottom 1.68 mm, port 1.80 mm',
        ).replace(/offsets: .*/, 'offsets: top 0 mm, starboard 0 mm, bottom 0 mm, port 0.01 mm'),
      ),
    )
    expect(c.verdict).toBe('outside')
    expect(c.withheld).toBeUndefined()
    expect(planJson(c).feet.every((foot) => foot.turns?.direction === 'up')).toBe(true)
    expect(correctionText(c, 'metric')).toContain('(U is larger than the move)')
    expect(correctionText(c, 'metric')).not.toMatch(/up [\d.]+ ± [\d.]+ mm \(U/)
  })
})

describe('the caution', () => {
  const caution = (bed: string): string =>
    correctionText(correct(driveOf(readingOf('dry-1', '2026-03-04'), `${bed}\n    ${feet}`)), 'metric').split(
      'Caution: ',
    )[1] ?? ''
  it.each([
    [
      'adjuster: stud-and-nuts\n    thread: M16',
      'so that no foot stays clamped while another is set',
      'shims',
    ],
    ['adjuster: shims\n    shims: 0.1 mm, 0.5 mm', 'never with fingers under the foot', 'nut'],
    ['', 'none stays clamped while another is set', 'nut'],
  ])('goes by how the feet are set: %s', (bed, words, other) => {
    expect(caution(bed)).toContain(words)
    expect(caution(bed)).toContain('Isolate and lock off')
    expect(caution(bed)).not.toContain(other)
  })
})

describe('numbers that nothing can be worked out from', () => {
  const faultOf = (text: string) => {
    const { block, lookup } = blockIn(text, 'main.dry-1')
    const outcome = correctionOf(block, lookup)
    return outcome.ok ? outcome.value.feetFault : outcome.fault
  }
  const reading = readingOf('dry-1', '2026-03-04')
  it.each([
    [
      'a foot far away',
      driveOf(
        readingOf('dry-1', '2026-03-04', loose.replace('1.92', '9')),
        `adjuster: shims\n    ${feet.replaceAll('560 mm', '20 m')}`,
      ),
      'from-coupling',
      'would have to move',
    ],
    [
      'a thread that is not made',
      driveOf(reading, `adjuster: stud-and-nuts\n    thread: M200x30\n    ${feet}`),
      'thread',
      'pitch',
    ],
    [
      'more places than can be told apart',
      driveOf(
        readingOf(
          'dry-1',
          '2026-03-04',
          Array.from({ length: 61 }, (_, i) => `${i * 5} deg 1.8 mm`).join(', '),
        ),
      ),
      'gaps',
      '60 places',
    ],
  ])('are put down to their fact in the words of the trade: %s', (_what, text, fact, words) => {
    const fault = faultOf(text)
    expect(fault).toMatchObject({ type: 'impossible', at: { fact: fact } })
    expect(fault?.words).toContain(words)
  })

  it.each([
    ['flange-diameter', 'flange-diameter: 125 mm', 'flange-diameter: 1e-300 mm'],
    ['gauge', 'gauge: 0.02 mm', 'gauge: 1e-320 mm'],
    ['gap-variation', 'gap-variation: max 0.10 mm', 'gap-variation: max 0 mm'],
  ])('are refused where they are written: %s', (fact, good, bad) => {
    const fault = faultOf(driveOf(reading).replace(good, bad))
    expect(fault?.type).toBe('unreadable')
    expect(fault?.words.toLowerCase()).toContain(`${fact} of the`)
    expect(fault?.words).not.toMatch(/expected|1e-/)
  })
})

describe('whatever was read', () => {
  const mm = fc.integer({ min: 100, max: 300 }).map((h) => (h / 100).toFixed(2))
  const step = fc.integer({ min: -30, max: 30 }).map((h) => (h / 100).toFixed(2))
  const four = <T>(of: fc.Arbitrary<T>) => fc.tuple(of, of, of, of)
  const at = ([top, starboard, bottom, port]: readonly string[]) =>
    `top ${top} mm, starboard ${starboard} mm, bottom ${bottom} mm, port ${port} mm`
  const mirror = ([top, starboard, bottom, port]: readonly string[]) =>
    [top, port, bottom, starboard] as string[]
  const jobOf = (gaps: readonly string[], rims: readonly string[], move: boolean): string =>
    driveOf(
      readingOf('dry-1', '2026-03-04', at(gaps)).replace(/offsets: .*/, `offsets: ${at(rims)}`) +
        (move ? '  move after dry-1 { done: 2026-03-04  fwd-port: up 1 flat }\n' : ''),
    )

  it('gives no turns where steps are withheld', () => {
    fc.assert(
      fc.property(four(mm), four(step), fc.boolean(), (gaps, rims, move) => {
        const json = planJson(correct(jobOf(gaps, rims, move)))
        expect(json.movedSince).toBe(move)
        if (move) expect(json.withheld).toBe('moved-since')
        if (json.withheld || json.verdict === 'within') {
          for (const foot of json.feet) expect(foot).not.toHaveProperty('turns')
          for (const foot of json.feet) expect(foot).not.toHaveProperty('shims')
        } else for (const foot of json.feet) expect(foot).toHaveProperty('turns')
        if (json.withheld) expect(json.predicted).toBeNull()
      }),
      { numRuns: 60 },
    )
  })

  it('mirrors port and starboard with the reading', () => {
    fc.assert(
      fc.property(four(mm), four(step), (gaps, rims) => {
        const a = planJson(correct(jobOf(gaps, rims, false)))
        const b = planJson(correct(jobOf(mirror(gaps), mirror(rims), false)))
        expect([b.verdict, b.withheld]).toEqual([a.verdict, a.withheld])
        a.feet.forEach((foot, i) => {
          expect(b.feet[i]?.starboard_mm.value).toBeCloseTo(-foot.starboard_mm.value, 3)
          expect(b.feet[i]?.up_mm.value).toBeCloseTo(foot.up_mm.value, 3)
        })
      }),
      { numRuns: 60 },
    )
  })
})

describe('readings of one day', () => {
  const last = (...taken: readonly string[]) =>
    lastReading(drive(taken.map((when, i) => readingOf(`r${i + 1}`, when)).join('')))?.name

  it('count by the clock where each has a time, else as they are written', () => {
    expect(last('2026-03-04T16:00', '2026-03-04T09:00')).toBe('r1')
    expect(last('2026-03-04T09:00', '2026-03-04')).toBe('r2')
    expect(last('2026-03-04', '2026-03-04T09:00')).toBe('r2')
    expect(last('2026-03-05', '2026-03-04T09:00')).toBe('r1')
    // 07:00 and 08:00 UTC.
    expect(last('2026-03-04T08:00Z', '2026-03-04T09:00+02:00')).toBe('r1')
  })

  it('are not before a move of that day that comes after an earlier reading', () => {
    const log =
      readingOf('r1', '2026-03-04') +
      '  move after r1 { done: 2026-03-04T08:00  fwd-port: up 2 flats }\n' +
      readingOf('r2', '2026-03-04')
    expect(correct(driveOf(log), 'r2').movedSince).toBe(false)
    expect(correct(driveOf(log), 'r1').movedSince).toBe(true)
  })
})

describe('a place of a foot that is outside what it can be', () => {
  it('is not called missing, nor unreadable', () => {
    const { feetFault } = correct(
      driveOf(readingOf('dry-1', '2026-03-04')).replace('from-coupling: 560 mm', 'from-coupling: 560 km'),
    )
    expect(feetFault).toMatchObject({
      type: 'unreadable',
      words: 'From-coupling of the foot cannot be used as written. Correct that first.',
    })
  })

  it('is to be filled in where it is not known yet', () => {
    const { feetFault } = correct(
      driveOf(readingOf('dry-1', '2026-03-04')).replace('from-coupling: 560 mm', 'from-coupling: ? mm'),
    )
    expect(feetFault?.words).toBe('The from-coupling of the foot is not known yet. Fill that in first.')
  })
})
