// Which look decides between mistakes that explain a reading alike: common practice, no source. The turns of a right-hand thread rise to the right (ISO 261
// threads are right-hand unless marked LH); ten turns of M16 take 20 mm (ISO 261: 2 mm of pitch).
import { describe, expect, it } from 'vitest'
import { moveDiscrepancy } from '../../../server/src/areas/alignment/plans/move-discrepancy.ts'
import { blockIn } from '../job-text.ts'
import { feet, flat, job } from './move-discrepancy-jobs.ts'

const discrepancy = (text: string) => {
  const { block, lookup } = blockIn(text, 'main.r2')
  return moveDiscrepancy(block, lookup)
}
const nuts = feet('up 1 flat', 'up 3 flats')
const both = feet('up 1 flat, starboard 0.2 mm', 'up 3 flats, starboard 0.5 mm')
const packs = feet('up 0.3 mm', 'up 1 mm')
const shims = { adjuster: 'shims\n    shims: 0.1 mm, 0.5 mm' }

const tight = 'Tighten all feet and read again. Move nothing before that.'
const top = 'Look at the coupling: by this reading, it is open at the top.'
const pitch = 'Check a stud: ten turns of its thread must measure 20 mm.'
const hand = 'Check a stud: the turns of a right-hand thread rise to the right.'
const marks = 'Use the marks on the lower nuts to see which were turned, which way and how far.'
const pack = 'Measure the pack of shims under each foot, and compare it with the log.'
const washers = 'Look at the marks of the washers on the feet'
const lifts = 'slacken one foot at a time with a dial on it'
const offsets = 'Read the offsets again.'
const all = [tight, top, pitch, hand, marks, pack, washers, lifts, offsets]

it.each([
  ['half the way', job(nuts, [flat / 2, 1.5 * flat]), [tight, pitch]],
  ['made twice, by nuts alone', job(nuts, [2 * flat, 6 * flat]), [pitch]],
  ['all nuts the wrong way', job(both, [-flat, -3 * flat], [0.2, 0.5]), [top, hand]],
  ['all shims the wrong way', job(packs, [-0.3, -1], [0, 0], shims), [top]],
  ['forward shims the wrong way', job(packs, [0.3, -1], [0, 0], shims), [pack]],
  ['moves of the ends exchanged', job(nuts, [3 * flat, flat]), [marks]],
  ['a foot that hangs', job(nuts, [flat, 1.5 * flat]), [lifts]],
  ['sideways not done', job(both, [flat, 3 * flat]), [washers]],
  ['old offsets', job(both, [flat, 3 * flat], [0.2, 0.5], { offsetsKept: true }), [offsets]],
  ['nothing explains it', job(both, [4, -5], [2, -0.5]), []],
])('%s asks for no more looks than it takes', (_, text, looks) => {
  const first = discrepancy(text)?.first ?? ''
  expect(all.filter((look) => first.includes(look))).toEqual(looks)
})

it('a gauge circle that may be another is told from half the way by a reading with all tight', () => {
  const found = discrepancy(job(both, [flat, 3 * flat], [0.2, 0.5], { circle: 60 }))
  expect(found?.words).toContain('the figures fit a gauge-diameter of about 6')
  expect(found).toMatchObject({ withholds: true, first: expect.stringContaining(tight) })
})

it('the text has one thing a sentence, and begins each with a capital', () => {
  for (const text of [
    job(nuts, [flat / 2, 1.5 * flat]),
    job(both, [4, -5], [2, -0.5]),
    job(nuts, [3 * flat, flat]),
  ]) {
    const { words = '' } = discrepancy(text) ?? {}
    expect(words).not.toMatch(/; [A-Z]|\. [a-z]|\.\.|\?\./)
    expect(words.match(/read again/gi)?.length ?? 0).toBeLessThanOrEqual(1)
  }
})

it('of a reading that a later whole one follows nothing is said: that one is looked at', () => {
  const went = job(nuts, [flat / 2, 1.5 * flat])
  expect(discrepancy(went)).toBeDefined()
  const [, second = ''] = /( {2}reading r2 [\s\S]*?\n {2}\}\n)/.exec(went) ?? []
  const third = second.replace('r2', 'r3').replace('2026-03-05', '2026-03-06')
  expect(discrepancy(went.replace(second, second + third))).toBeUndefined()
})

it('two moves of the nuts are one, so that a left-hand stud shows as such', () => {
  // Two moves of 1 and 3 flats up on a left-hand thread: the machine came down by 2 and 6.
  const text = job(nuts, [-2 * flat, -6 * flat])
  const [, move = ''] = /( {2}move [\s\S]*?\n {2}\}\n)/.exec(text) ?? []
  expect(discrepancy(text.replace(move, move + move))?.words).toContain(
    'the thread is left-hand, but the file does not say so',
  )
})

it('names the reading in which places were exchanged', () => {
  const exchanged = (name: string) =>
    job(nuts, [flat, 3 * flat]).replace(
      new RegExp(
        `(reading ${name} \\{[^}]*gaps: )top ([^,]*)(.*)bottom ([^,]*)(.*\\n.*offsets: )top ([^,]*)(.*)bottom ([^,]*)`,
      ),
      '$1top $4$3bottom $2$5top $8$7bottom $6',
    )
  expect(discrepancy(exchanged('r1'))?.first).toContain('If top and bottom are swapped, correct r1.')
  expect(discrepancy(exchanged('r2'))?.first).toContain(
    'If top and bottom are swapped, correct this reading.',
  )
})

it('where faces are parallel, the straightedge shows which way the flange stands', () => {
  // As it truly stands: -4 + 1.52 / 0.38 = 0 mrad, and 0.3 mm low. Read with top and bottom exchanged: 0.3 mm high. 0.004 mm of gap is below U.
  const text = job(feet('up 0.02 mm', 'up 1.54 mm'), [0.62, 2.14]).replace('top 2.00 mm', 'top 2.004 mm')
  const { first = '', words = '' } = discrepancy(text) ?? {}
  expect(words).toContain('top and bottom are swapped in this reading')
  expect(first).toContain(
    'Lay a straightedge across both flanges at the top: by this reading, the machine flange stands 0.30 mm high.',
  )
  expect(first).not.toContain('feeler')
})

it('a machine that may have come a part of the way is read again with all tight, whatever else is looked at', () => {
  // By the slope alone a fourth of the way is also a forward foot that hangs: (3 / 2 - 1) flats of the 2 there should be.
  const slope = job(nuts, [flat / 4, (3 * flat) / 4]).replace(/ {4}offsets: .*\n/g, '')
  const { first = '', words = '' } = discrepancy(slope) ?? {}
  expect(words).toContain('the machine went only about a quarter of the way')
  expect(words).toContain('did not follow')
  expect(first).toContain(tight)
  expect(first).toContain(lifts)
})

describe('a later reading of a machine that stands as before', () => {
  // The figures of both readings place by place, top, starboard, bottom, port: gaps, then offsets in 0.01 mm.
  const log = (gaps: readonly number[], offsets: readonly number[]) => {
    const round = (figures: readonly number[], from: number) =>
      ['top', 'starboard', 'bottom', 'port']
        .map((place, i) => `${place} ${((figures[i] ?? 0) / 100 + from).toFixed(2)} mm`)
        .join(', ')
    const reading = (name: string, day: number, ofGaps: readonly number[], ofOffsets: readonly number[]) =>
      `  reading ${name} { taken: 2026-03-0${day}  gauge: 0.01 mm\n    gaps: ${round(ofGaps, 4)}\n    offsets: ${round(ofOffsets, 0)} }\n`
    const [head = ''] = job(nuts, [0, 0]).split('  reading r1')
    return `${head}${reading('r1', 1, [28, -12, -28, 12], [30, 31, -30, -31])}${reading('r2', 2, gaps, offsets)}}\n`
  }
  const rim =
    'Lay a straightedge across both rims at the top: by this reading, the rim of the shaft flange stands out by 0.30 mm.'
  const widest = (place: string) =>
    `Find where the gap is widest, by eye or with a feeler gauge: by this reading, at the ${place}, by 0.56 mm.`
  it.each([
    ['the signs of the offsets are reversed in', [28, -12, -28, 12], [-30, -31, 30, 31], rim],
    ['the signs of the gaps are reversed in', [-28, 12, 28, -12], [30, 31, -30, -31], widest('bottom')],
    ['the places are half a turn off in', [-28, 12, 28, -12], [-30, -31, 30, 31], widest('bottom')],
    [
      'the places are a quarter turn off, clockwise looking forward, in',
      [12, 28, -12, -28],
      [-31, 30, 31, -30],
      widest('starboard side'),
    ],
  ])('%s it gives one look and no steps', (words, gaps, offsets, look) => {
    const found = discrepancy(log(gaps, offsets))
    expect(found?.words).toContain(`${words} this reading`)
    expect(found?.first).toContain(look)
    expect(found?.withholds).toBe(true)
  })
})
