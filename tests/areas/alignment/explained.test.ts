// A reading after a move, held against what the move should have done. Readings are made by similar triangles from a machine on four feet, and
// rounded to the gauge; what went wrong is done to that machine and has to be named. The 99 % of "noise" is that of the chi-square test.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { logUpTo } from '../../../server/src/areas/alignment/plans/log.ts'
import { formatExplanations } from '../../../server/src/areas/alignment/plans/move-discrepancy-words.ts'
import { movesCompared } from '../../../server/src/areas/alignment/plans/reading-comparison.ts'
import type { Hypothesis } from '../../../server/src/engineering/alignment/hypothesis.ts'
import { blockIn } from '../job-text.ts'

/** Axis of the machine: slopes in mrad, offsets at the faces in mm; + up, + to starboard. */
interface Axis {
  readonly tv: number
  readonly th: number
  readonly oz: number
  readonly oy: number
}

/** Heights and sideways of both ends, mm: aft at 180 mm, forward at 560 mm. */
function moved(axis: Axis, [aft, fwd]: Ends, [aftY, fwdY]: Ends = [0, 0]): Axis {
  const [tv, th] = [((fwd - aft) / 380) * 1000, ((fwdY - aftY) / 380) * 1000]
  return { tv: axis.tv + tv, th: axis.th + th, oz: axis.oz + aft - tv * 0.18, oy: axis.oy + aftY - th * 0.18 }
}
type Ends = readonly [aft: number, fwd: number]

type Say = (mm: number) => string
const metric: Say = (mm) => `${Number(mm.toFixed(4))} mm`
const inches: Say = (mm) => `${Number((mm / 25.4).toFixed(7))} in`
const rounded = (mm: number) => Math.round(mm / 0.02) * 0.02

/** A reading of that axis with feelers of 0.02 mm; `circle`: where they truly go in, mm. */
function reading(
  name: string,
  day: string,
  axis: Axis,
  { say = metric, circle = 110, more = '' } = {},
): string {
  const at = (up: number, starboard: number) =>
    say(rounded(1.8 - (circle / 2000) * (up * axis.tv + starboard * axis.th)))
  const rim = (mm: number) => say(rounded(mm))
  return `  reading ${name} {
    taken: 2026-03-${day}
    gauge: ${say(0.02)}
    ${more}
    gaps: top ${at(1, 0)}, starboard ${at(0, 1)}, bottom ${at(-1, 0)}, port ${at(0, -1)}
    offsets: top ${rim(axis.oz)}, starboard ${rim(axis.oy)}, bottom ${rim(-axis.oz)}, port ${rim(-axis.oy)}
  }
`
}

/** Flats of an M16 nut, 2 mm of pitch: a third of a millimetre each. */
const flat = 1 / 3

function move([aft, fwd]: Ends, [aftY, fwdY]: Ends = [0, 0], say: Say = metric): string {
  const line = (up: number, y: number) =>
    [
      up !== 0 && `${up > 0 ? 'up' : 'down'} ${Math.abs(up)} flats`,
      y !== 0 && `${y > 0 ? 'starboard' : 'port'} ${say(Math.abs(y))}`,
    ]
      .filter(Boolean)
      .join(', ') || 'none'
  return `  move after dry-1 { done: 2026-03-04
    aft-port: ${line(aft, aftY)}
    aft-stbd: ${line(aft, aftY)}
    fwd-port: ${line(fwd, fwdY)}
    fwd-stbd: ${line(fwd, fwdY)}
  }
`
}

function driveOf(log: string, say: Say = metric): string {
  const foot = (name: string, x: number, side: string) =>
    `    foot ${name} { from-coupling: ${say(x)}  across: ${say(140)} ${side} }\n`
  return `drive main {
  coupling { flange-diameter: ${say(125)}  gauge-diameter: ${say(110)}  gap-variation: max ${say(0.1)} [maker]  offset: max ${say(0.15)} [maker] }
  bed {
    adjuster: stud-and-nuts
    thread: M16
${foot('aft-port', 180, 'port')}${foot('aft-stbd', 180, 'starboard')}${foot('fwd-port', 560, 'port')}${foot('fwd-stbd', 560, 'starboard')}  }
${log}}
`
}

const against = (text: string, name = 'dry-2') => {
  const { block, lookup } = blockIn(text, `main.${name}`)
  return logUpTo(block, lookup).at(-1)?.against
}
const compared = (text: string) => {
  const found = against(text)
  if (found?.type !== 'compared') throw new Error(`not compared: ${found?.type}`)
  return found
}
const hypotheses = (text: string): readonly Hypothesis[] =>
  compared(text).mismatch.explanations.map(({ hypothesis }) => hypothesis)

const start: Axis = { tv: -2.4, th: 0.2, oz: 0.06, oy: -0.03 }
const right: Ends = [flat, 3.5 * flat]

interface Mistake {
  readonly mistake: string
  readonly words: string
  readonly log: (say: Say) => string
}

const mistakes: readonly Mistake[] = [
  {
    mistake: 'forward nuts the wrong way',
    words: 'Most likely the nuts at fwd-port and fwd-stbd were turned the wrong way.',
    log: (say) =>
      reading('dry-1', '04', start, { say }) +
      move([1, 3.5]) +
      reading('dry-2', '05', moved(start, [flat, -3.5 * flat]), { say }),
  },
  {
    mistake: 'an end that did not follow, the same for a stiff machine as one of its nuts the wrong way',
    words:
      'Either the nuts at aft-port or aft-stbd were turned the wrong way. Or the move at aft-port and aft-stbd was not made: was it forgotten?',
    log: (say) =>
      reading('dry-1', '04', start, { say }) +
      move([3, 3.5]) +
      reading('dry-2', '05', moved(start, [0, 3.5 * flat]), { say }),
  },
  {
    mistake: 'read before the move',
    words:
      'Most likely nothing moved: was this read before the move was made, was the move not made, or were old figures copied?',
    log: (say) =>
      reading('dry-1', '04', start, { say }) + move([1, 3.5]) + reading('dry-2', '05', start, { say }),
  },
  {
    mistake: 'half the way, with an offset that tells it from a gauge circle',
    words:
      'Either the machine went only about half the way: were the nuts tight when it was read? Or the thread is wrong: the figures fit a pitch of about 1',
    log: (say) =>
      reading('dry-1', '04', start, { say }) +
      move([3, 6]) +
      reading('dry-2', '05', moved(start, [1.5 * flat, 3 * flat]), { say }),
  },
  {
    mistake: 'a gauge circle half as wide, with an offset that tells it from half the way',
    words: 'Most likely the gauge circle is wrong: the figures fit a gauge-diameter of about 5',
    log: (say) =>
      reading('dry-1', '04', start, { say, circle: 55 }) +
      move([3, 12]) +
      reading('dry-2', '05', moved(start, [3 * flat, 12 * flat]), { say, circle: 55 }),
  },
  {
    mistake: 'sides swapped',
    words:
      'Either port and starboard are swapped in this reading. Or port and starboard are swapped in dry-1.',
    log: (say) => {
      const from = { ...start, th: 2.4 }
      const to = moved(from, right)
      return (
        reading('dry-1', '04', from, { say }) +
        move([1, 3.5]) +
        reading('dry-2', '05', { ...to, th: -to.th, oy: -to.oy }, { say })
      )
    },
  },
  {
    mistake: 'top and bottom swapped',
    words: 'Most likely top and bottom are swapped in this reading.',
    log: (say) => {
      const to = moved(start, [flat, 2 * flat])
      return (
        reading('dry-1', '04', start, { say }) +
        move([1, 2]) +
        reading('dry-2', '05', { ...to, tv: -to.tv, oz: -to.oz }, { say })
      )
    },
  },
  {
    mistake: 'an offset not read again',
    words: 'Most likely the offset did not change with the slope: are the offsets old ones?',
    log: (say) =>
      reading('dry-1', '04', start, { say }) +
      move([2, 3.5]) +
      reading(
        'dry-2',
        '05',
        { ...moved(start, [2 * flat, 3.5 * flat]), oz: start.oz, oy: start.oy },
        { say },
      ),
  },
  {
    mistake: 'sideways to the other side',
    words:
      'Either the machine went to the opposite side. Or port and starboard are swapped in both readings, dry-1 and this one.',
    log: (say) =>
      reading('dry-1', '04', start, { say }) +
      move([1, 3.5], [0, 0.5], say) +
      reading('dry-2', '05', moved(start, right, [0, -0.5]), { say }),
  },
  {
    mistake: 'made twice over',
    words: 'Most likely the move was made twice.',
    log: (say) =>
      reading('dry-1', '04', start, { say }) +
      move([2, 3.5], [0.1, 0.5], say) +
      reading('dry-2', '05', moved(start, [4 * flat, 7 * flat], [0.2, 1]), { say }),
  },
  {
    mistake: 'made at the wrong end',
    words: 'Most likely the moves of the two ends were swapped.',
    log: (say) =>
      reading('dry-1', '04', start, { say }) +
      move([1, 3.5], [0, 0.5], say) +
      reading('dry-2', '05', moved(start, [3.5 * flat, flat], [0.5, 0]), { say }),
  },
  {
    mistake: 'sideways not done',
    words: 'Most likely the heights were set, and the sideways move was not made.',
    log: (say) =>
      reading('dry-1', '04', start, { say }) +
      move([1, 3.5], [0, 0.5], say) +
      reading('dry-2', '05', moved(start, right), { say }),
  },
  {
    mistake: 'heights not set',
    words: 'Most likely the heights were not set, and only the sideways move was made.',
    log: (say) =>
      reading('dry-1', '04', start, { say }) +
      move([1, 3.5], [0, 0.5], say) +
      reading('dry-2', '05', moved(start, [0, 0], [0, 0.5]), { say }),
  },
  {
    mistake: 'nothing moved, though a sideways move was noted',
    words: 'Most likely nothing moved: was this read before the move was made',
    log: (say) =>
      reading('dry-1', '04', start, { say }) +
      move([1, 3.5], [0, 0.5], say) +
      reading('dry-2', '05', start, { say }),
  },
  {
    mistake: 'a stud of M16x1.5',
    words: 'Most likely the thread is wrong: the figures fit a pitch of about 1.5',
    log: (say) =>
      reading('dry-1', '04', start, { say }) +
      move([4, 6], [0, 1.5], say) +
      reading('dry-2', '05', moved(start, [3 * flat, 4.5 * flat], [0, 1.5]), { say }),
  },
  {
    mistake: 'top and bottom swapped in both readings, a left-hand thread or all nuts the wrong way',
    words:
      'Either the nuts at aft-port, aft-stbd, fwd-port and fwd-stbd were turned the wrong way. Or the thread is left-hand, but the file does not say so. Or top and bottom are swapped in both readings, dry-1 and this one.',
    log: (say) => {
      const to = moved(start, [-2 * flat, -3.5 * flat], [0, 0.5])
      return (
        reading('dry-1', '04', start, { say }) +
        move([2, 3.5], [0, 0.5], say) +
        reading('dry-2', '05', to, { say })
      )
    },
  },
  {
    mistake: 'top and bottom swapped in the first reading',
    words: 'Most likely top and bottom are swapped in dry-1.',
    log: (say) => {
      const to = moved(start, [1 * flat, 2 * flat])
      return (
        reading('dry-1', '04', { ...start, tv: -start.tv, oz: -start.oz }, { say }) +
        move([1, 2]) +
        reading('dry-2', '05', to, { say })
      )
    },
  },
  {
    mistake: 'something else altogether',
    words: 'No single mistake explains it.',
    log: (say) =>
      reading('dry-1', '04', start, { say }) +
      move([1, 3.5]) +
      reading('dry-2', '05', { tv: 1, th: -2, oz: 0.3, oy: 0.4 }, { say }),
  },
]

/** The boat in a mirror. */
const mirrored = (text: string): string => {
  const other: Readonly<Record<string, string>> = { port: 'starboard', starboard: 'port' }
  return text
    .replace(/\b(port|starboard)\b(?!:)/g, (side) => other[side] ?? '')
    .replace(/-(port|starboard|stbd)\b(?=[ :])/g, (side) => (side === '-stbd' ? '-port' : '-stbd'))
}
const mirroredName = (name: string) =>
  /port/.test(name) ? name.replace('port', 'stbd') : name.replace('stbd', 'port')

describe('a reading after a move', () => {
  it.each(mistakes)('names the mistake: $mistake', ({ log, words }) => {
    expect(formatExplanations(compared(driveOf(log(metric))), 'metric')).toContain(words)
  })

  it('tells the true gauge circle within a twentieth', () => {
    const to = moved(start, [3 * flat, 12 * flat])
    const [circle] = hypotheses(
      driveOf(
        reading('dry-1', '04', start, { circle: 55 }) +
          move([3, 12]) +
          reading('dry-2', '05', to, { circle: 55 }),
      ),
    )
    expect(circle?.type === 'other-gauge-diameter' && Math.abs(circle.factor * 110 - 55)).toBeLessThan(2.75)
  })

  it.each(mistakes)('names the same mistake in inches: $mistake', ({ log }) => {
    const kinds = (say: Say) =>
      hypotheses(driveOf(log(say), say)).map((of) => JSON.stringify({ ...of, factor: 0, share: 0 }))
    expect(new Set(kinds(inches))).toEqual(new Set(kinds(metric)))
  })

  it.each(mistakes)('names the mirrored mistake of the mirrored boat: $mistake', ({ log }) => {
    const said = (all: readonly Hypothesis[], name = (one: string) => one) =>
      all.map((of) => ('feet' in of ? `${of.type} ${of.feet.map(name).sort().join()}` : of.type)).sort()
    expect(said(hypotheses(driveOf(mirrored(log(metric)))), mirroredName)).toEqual(
      said(hypotheses(driveOf(log(metric)))),
    )
  })

  it('names nothing where the gauge explains it, in 98 of 100 and more', () => {
    const between = (most: number) => fc.double({ min: -most, max: most, noNaN: true })
    const cases = fc.sample(
      fc.record({
        axis: fc.record({ tv: between(3), th: between(3), oz: between(0.4), oy: between(0.4) }),
        up: fc.tuple(fc.integer({ min: -8, max: 8 }), fc.integer({ min: -8, max: 8 })),
        across: fc.tuple(fc.integer({ min: -5, max: 5 }), fc.integer({ min: -5, max: 5 })),
      }),
      { numRuns: 400, seed: 7 },
    )
    const quiet = cases.filter(({ axis, up: [aft, fwd], across }) => {
      const sideways: Ends = [across[0] / 10, across[1] / 10]
      const to = moved(axis, [aft * flat, fwd * flat], sideways)
      return compared(
        driveOf(reading('dry-1', '04', axis) + move([aft, fwd], sideways) + reading('dry-2', '05', to)),
      ).mismatch.noise
    })
    expect(quiet.length).toBeGreaterThanOrEqual(392)
  })

  it('adds up several moves, and a foot not named stays', () => {
    const twice = `  move after dry-1 { done: 2026-03-04  aft-port: up 1 flat  aft-stbd: up 1 flat }
  move after dry-1 { done: 2026-03-04  fwd-port: up 2 flats  fwd-stbd: up 2 flats }
  move after dry-1 { done: 2026-03-04  fwd-port: up 1.5 flats  fwd-stbd: up 1.5 flats }
`
    const text = driveOf(reading('dry-1', '04', start) + twice + reading('dry-2', '05', moved(start, right)))
    expect(compared(text).mismatch.noise).toBe(true)
    expect(movesCompared(compared(text), blockIn(text, 'main.dry-2').block)).toHaveLength(3)
  })

  it('that moved nothing shows the same again, or that something did move', () => {
    const log = (to: Axis) =>
      driveOf(reading('dry-1', '04', start) + move([0, 0]) + reading('dry-2', '05', to))
    expect(compared(log(start)).mismatch.noise).toBe(true)
    expect(compared(log(moved(start, right))).mismatch.noise).toBe(false)
  })

  it('goes by the last whole reading: one that does not close is passed over', () => {
    const open =
      '  reading bad { taken: 2026-03-05  gauge: 0.02 mm\n    gaps: top 1.9 mm, starboard 1.2 mm, bottom 1.6 mm, port 1.3 mm\n  }\n'
    const text = driveOf(
      `${reading('dry-1', '04', start)}${move([1, 3.5])}${open}${reading('dry-2', '06', moved(start, right))}`,
    )
    expect(compared(text)).toMatchObject({ since: 'dry-1', mismatch: { noise: true } })
    expect(against(text, 'bad')).toBeUndefined()
  })
})

describe('nothing is compared', () => {
  const whole = (first = '', second = '', moves = move([1, 3.5])) =>
    driveOf(
      `${reading('dry-1', '04', start, { more: first })}${moves}${reading('dry-2', '05', start, { more: second })}`,
    )
  it.each([
    ['launched', 'afloat: no', 'afloat: yes'],
    ['launched', '', 'afloat: yes'],
    ['hauled-out', 'afloat: yes', 'afloat: no'],
    ['heated', '', 'hot: yes'],
    ['cooled', 'hot: yes', 'hot: no'],
  ] as const)('across a change of shape: %s', (type, first, second) => {
    expect(against(whole(first, second))).toEqual({ type, since: 'dry-1' })
  })

  it.each([
    ['a foot is not in the bed', '  move after dry-1 { done: 2026-03-04  middle: up 1 flat }\n'],
    [
      'a move could not be read',
      '  move after dry-1 { done: 2026-03-04  aft-port: up 1 flt  fwd-port: up 1 flat }\n',
    ],
    [
      'a move comes after a reading that is not there',
      `${move([1, 3.5])}  move after dry-9 { done: 2026-03-04  aft-port: up 1 flat }\n`,
    ],
    ['a move has a date that says otherwise', move([1, 3.5]).replace('{', '{\n    done: 2026-03-06')],
  ])('where %s', (_, moves) => {
    expect(against(whole('', '', moves))).toBeUndefined()
  })

  it('with a thread that is not known, or two feet of one name', () => {
    expect(against(whole().replace('thread: M16', ''))).toBeUndefined()
    expect(against(whole().replace('foot aft-stbd', 'foot aft-port'))).toBeUndefined()
  })
})
