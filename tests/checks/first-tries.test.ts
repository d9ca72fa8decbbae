// What a newcomer writes at first: one finding, at the right place, that shows how it is written.
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../server/src/areas/index.ts'
import { findingsOf } from './marks.ts'
import { applied, offersOf } from './offers.ts'

/** What is found in a text, each with the marked words. */
const found = (text: string) =>
  findingsOf(text, allChecks).findings.map(({ check, at, message, todo }) => ({
    check,
    marked: at.section.text.slice(at.span.start, at.span.end),
    words: `${message} ${todo}`,
  }))

const about = (text: string, check: string) => found(text).filter((one) => one.check === check)

/** What short texts like these leave out. */
const aside = [
  'job/fact-missing',
  'job/block-missing',
  'job/job-missing',
  'job/block-misplaced',
  'alignment/no-reading-after-move',
  'alignment/move-after-unknown-reading',
]

const foot = (across: string) => `foot aft { from-coupling: 180 mm  across: ${across} }`
const seal = (length: string) => `seal { free-length: ${length} }`
const gaps = (second: string) =>
  `reading dry-1 {\n  gaps: top 1.9 mm, ${second}, bottom 1.6 mm, port 1.7 mm\n}`
const moved = (move: string) => `drive main {\n  move after dry-1 { done: 2026-03-04  aft: ${move} }\n}`

describe('a value of another form is shown how it is written', () => {
  it.each([
    ['a side before its length', foot('port 140 mm'), 'port 140 mm', 'Did you mean 140 mm port?'],
    ['the trade short for a side', foot('140 mm stbd'), 'stbd', 'Did you mean starboard?'],
    ['no side', foot('140 mm'), '140 mm', 'Write a value such as 140 mm port.'],
    ['a sign for a side', foot('-140 mm'), '-140 mm', 'Write a value such as 140 mm port.'],
    ['a sign beside a side', foot('-140 mm port'), '-140 mm port', 'Write a value such as 140 mm port.'],
    ['a place by its short name', gaps('stbd 1.8 mm'), 'stbd', 'Did you mean starboard?'],
    ['a way by its short name', moved('dn 2 flats'), 'dn', 'Did you mean down?'],
    ['feet and inches', seal('5 ft 6-1/2 in'), '5 ft 6-1/2 in', 'Did you mean 5 ft + 6-1/2 in?'],
    ['a word for a length', seal('"long"'), '"long"', ''],
    ['a word of few', 'coupling { kind: bolted }', 'bolted', 'Write one of rigid,'],
    ['phases with a colon', 'phase-map {\n  A: U\n}', 'A', 'Write it like this: `A to U,'],
    ['a block by its short name', 'drive main {\n  prop { }\n}', 'prop', 'Did you mean propeller?'],
    ['one length too many', seal('148 mm 2 mm'), '148 mm 2 mm', 'Write a value such as 148 mm.'],
  ])('%s', (_title, text, marked, words) => {
    const of = found(text).filter(({ check }) => !aside.includes(check))
    expect(of.map((one) => one.marked)).toEqual([marked])
    expect(of[0]?.words).toContain(words)
    expect(of[0]?.words).not.toContain('reference')
  })

  it('feet and inches as they are offered are read', () => {
    expect(about(seal('5 ft + 6-1/2 in'), 'job/value-not-allowed')).toEqual([])
  })

  // Energy is charge times voltage: 12 kWh at 96 V are 125 Ah (ISO 80000-6, from memory).
  it('a battery in kWh is told how it gets its Ah, and what it is told is read', () => {
    const battery = (capacity: string) => `battery house {\n  nominal: 96 V\n  capacity: ${capacity}\n}`
    expect(found(battery('12 kWh')).map(({ words }) => words)).toEqual([
      expect.stringContaining('12 kWh / nominal'),
    ])
    expect(found(battery('12 kWh / nominal'))).toEqual([])
  })
})

describe('what was pasted from elsewhere', () => {
  it.each([
    ['job “hello there” {\n  vessel: "Launch 07"\n}', '“hello there”', '"hello there"'],
    ['job "x" {\n  vessel: “Launch 07”\n}', '“Launch 07”', '"Launch 07"'],
    ['job "x" {\n  vessel: „Launch 07“\n}', '„Launch 07“', '"Launch 07"'],
    ['job "x" {\n  vessel: “Launch 07\n}', '“Launch 07', '"Launch 07"'],
    ['seal {\n  free-length: 148 mm [drawing “S-07”]\n}', '“S-07”', '"S-07"'],
  ])('%j: curly quotes are one finding', (text, marked, straight) => {
    const of = found(text).filter(({ check }) => !aside.includes(check))
    expect(of.map((one) => [one.check, one.marked])).toEqual([['job/curly-quotes', marked]])
    expect(of[0]?.words).toContain(`Use straight quotes: ${straight}.`)
  })
})

describe('what is half written, or written as elsewhere', () => {
  it.each([
    ['a block without its brace', 'drive main', 'drive main', 'drive begins a block, and its { is missing.'],
    ['a word that is a block or a fact', 'drive main {\n  battery house\n}', 'battery house', 'or a colon'],
    ['a path without its quotes', 'use parts/stock', 'use parts/stock', '`use "parts/stock.wright"`'],
    ['an origin without its end', seal('148 mm [maker'), '[maker', 'The closing ] is missing.'],
    ['a sum without its end', seal('2 * (70 mm + 4 mm'), '(70 mm + 4 mm', 'The closing ) is missing.'],
    ['a line of comment', '// all invented', '//', 'Begin a comment with #.'],
    ['an unknown block behind a fact', 'bed { thread: M16 foo aft {\n  } }', '{', 'on a line of its own'],
  ])('%s', (_title, text, marked, words) => {
    const [first] = found(text).filter((one) => one.marked === marked)
    expect(first?.words).toContain(words)
  })

  it.each([
    [seal('148 mm [maker'), 'job/bracket-not-closed', seal('148 mm [maker]')],
    [seal('(140 mm + 8 mm'), 'job/bracket-not-closed', seal('(140 mm + 8 mm)')],
    ['// all invented', 'job/unreadable', '# all invented'],
    ['seal {\n  free-length = 148 mm\n}', 'job/line-not-understood', 'seal {\n  free-length: 148 mm\n}'],
  ])('%j is put right', (text, check, right) => {
    const [offer] = offersOf(text, check).offers
    expect(offer && applied(offer.document, offer.fix)).toBe(right)
    expect(about(right, check)).toEqual([])
  })
})

describe('threads', () => {
  // ISO 261: a fine thread is named by its diameter and its pitch, M16x1.5.
  it.each(['M16x1.5', 'M16', '"M16 x 1.5"'])('%s is read as one word', (thread) => {
    const bed = `bed { adjuster: stud-and-nuts  thread: ${thread} }`
    expect(found(bed).filter(({ check }) => !aside.includes(check))).toEqual([])
  })

  it.each(['4 x M10', '4 x M10x1.25', '4 x M10x1.25 class 8.8, 45 N·m'])('%s are bolts', (bolts) => {
    expect(found(`coupling { kind: rigid  bolts: ${bolts} }`)).toEqual([])
  })
})

describe('a name that is none', () => {
  it.each([
    ['drive main {\n  bearing 2nd { }\n  bearing 3rd { }\n}', ['bearing 2nd', 'bearing 3rd'], 'bearing-2nd'],
    ['reading dry 1 { }', ['reading dry 1'], 'reading dry-1'],
    ['bed {\n  foot 1 { }\n  foot 2 { }\n}', ['foot 1', 'foot 2'], 'foot foot-1'],
    ['job Hello { }', ['job Hello'], 'job "Hello"'],
    ['bearing { }\nbearing { }', ['bearing', 'bearing'], 'Write it like this: bearing stern.'],
    ['move first { }', ['move first'], 'Write it like this: move after dry-1.'],
  ])('%j', (text, marked, offered) => {
    const of = found(text).filter(({ check }) => !aside.includes(check))
    expect(of.map((one) => [one.check, one.marked])).toEqual(
      marked.map((one) => ['job/heading-unclear', one]),
    )
    expect(of[0]?.words).toContain(offered)
    if (/\d/.test(text)) expect(of[0]?.words).toContain('begins with a letter and has no spaces')
  })
})

describe('one name for two blocks', () => {
  it('of different kinds is told to be shared across kinds', () => {
    const text = 'drive main {\n  motor { }\n  cable motor { }\n}'
    const [one, ...more] = about(text, 'job/duplicate')
    expect(more).toEqual([])
    expect(one?.words).toContain('A cable and a motor both go by motor: names are shared across kinds.')
    expect(one?.words).toContain('Give one of them another name.')
  })

  it('of one kind is told as before', () => {
    const [one] = about('drive main {\n  cable a { }\n  cable a { }\n}', 'job/duplicate')
    expect(one?.words).toBe('a is stated twice; the first one counts. Keep the correct one.')
  })
})

describe('a circle of `like`', () => {
  it.each([
    [
      'of two drives',
      'drive a { like: b }\ndrive b { like: a }',
      ['This drive is like b, and b leads back to this', 'This drive is like a, and a leads back to this'],
    ],
    [
      'of three parts',
      'gear a { like: b }\ngear b { like: c }\ngear c { like: a }',
      [
        'This gear is like b, and b leads',
        'This gear is like c, and c leads',
        'This gear is like a, and a leads',
      ],
    ],
    ['of a drive alone', 'drive a { like: a }', ['This drive is like itself, so it takes nothing.']],
    [
      'of two feet',
      'bed {\n  foot a { like: b }\n  foot b { like: a }\n}',
      ['This foot is like a, and a leads'],
    ],
  ])('%s says so in plain words', (_title, text, words) => {
    const of = about(text, 'job/refers-to-itself')
    expect(of).toHaveLength(words.length)
    for (const [i, each] of words.entries()) expect(of[i]?.words).toContain(each)
    expect(of.map((one) => one.words).join()).not.toContain('Write the value itself')
  })

  it('is told apart from a value that leads back to itself', () => {
    const [one] = about('seal { free-length: free-length + 2 mm }', 'job/refers-to-itself')
    expect(one?.words).toBe(
      'free-length is calculated from itself, so it has no value. Write an amount in its place.',
    )
    const blocks = about(
      'drive a { gear { ratio: b.gear.ratio } }\ndrive b { gear { ratio: a.gear.ratio } }',
      'job/refers-to-itself',
    )
    expect(blocks[0]?.words).toContain('b.gear.ratio is in a block that takes a value from this one')
  })
})

describe('a block of which a drive has one', () => {
  const machines =
    '  propeller { turns: right-hand }\n  motor { terminals: U, V, W  turns: clockwise }\n  controller { terminals: A, B, C }\n  phase-map { A to U, B to V, C to W }\n'

  it('written twice is one finding, and the second is not checked any further', () => {
    const text = `drive main {\n${machines}  phase-map { A to U, B to U, C to W }\n}`
    expect(found(text).filter(({ check }) => /duplicate|^phases/.test(check))).toEqual([
      {
        check: 'job/duplicate',
        marked: 'phase-map',
        words:
          'There is more than one phase-map here; the first one counts. Keep the correct one. Delete the other.',
      },
    ])
  })

  it('written once is checked', () => {
    expect(about(`drive main {\n${machines.replace('B to V', 'B to U')}}`, 'phases/doubled')).toHaveLength(1)
  })
})
