// Names, references, sharing: the language's own rules (design decisions, no outside source).
import { describe, expect, it } from 'vitest'
import { Analysis } from '../../server/src/job/analysis.ts'
import { resolvePath } from '../../server/src/job/files.ts'
import { referredBlock } from '../../server/src/job/lookup.ts'
import { referencesOf } from '../../server/src/job/references.ts'
import { factValue, read } from './meaning.ts'

const typesOf = (text: Parameters<typeof read>[0]) => read(text).problems.map(({ type }) => type)

describe('a name', () => {
  it('is looked for from where it stands outwards', () => {
    const { blocks, problems } = read(`battery house { nominal: 96 V }
drive main {
  battery: house
  seal { free-length: 148 mm  fitted-length: free-length - 26 mm }
  shaft { diameter: 35 mm }
  propeller { diameter: 12 * shaft.diameter }
}`)
    expect(problems).toEqual([])
    expect(factValue(blocks, 'main.seal.fitted-length')).toBeCloseTo(0.122, 12)
    expect(factValue(blocks, 'main.propeller.diameter')).toBeCloseTo(0.42, 12)
  })

  it('is found wherever it is written: order does not matter', () => {
    const text = ['drive main {', '  seal { fitted-length: free-length / 2  free-length: 148 mm }', '}']
    expect(factValue(read(text.join('\n')).blocks, 'main.seal.fitted-length')).toBeCloseTo(0.074, 12)
  })

  it('in another drive is reached by a dot', () => {
    const { blocks, problems } = read(`drive port { gear { ratio: 2.5 } }
drive stbd { gear { ratio: port.gear.ratio } }`)
    expect(problems).toEqual([])
    expect(factValue(blocks, 'stbd.gear.ratio')).toBe(2.5)
  })

  it('that leads nowhere offers the nearest', () => {
    const [problem] = read('gear spare { ratio: 2.5 }\ndrive d { gear { like: spere } }').problems
    expect(problem).toMatchObject({ type: 'unresolved', path: 'spere', nearest: 'spare', written: 'spere' })
  })

  it.each([
    ['itself', 'seal { free-length: free-length }'],
    ['itself through another', 'seal { free-length: fitted-length  fitted-length: free-length }'],
    ['a part like itself', 'gear a { like: a }'],
  ])('never leads round for ever: %s', (_what, text) => {
    const types = typesOf(text)
    expect(types.some((type) => type === 'refers-to-itself' || type === 'unresolved')).toBe(true)
  })

  it.each([
    ['three', 'gear a { like: b }\ngear b { like: c }\ngear c { like: a }', ['b', 'c', 'a']],
    [
      'two, by facts',
      'drive a { gear { ratio: b.gear.ratio } }\ndrive b { gear { ratio: a.gear.ratio } }',
      ['b.gear.ratio', 'a.gear.ratio'],
    ],
  ])('may lead round over several blocks, and each of them says so: %s', (_what, text, written) => {
    const found = read(text).problems.map((problem) => ({ type: problem.type, written: problem.written }))
    expect(found).toEqual(written.map((name) => ({ type: 'refers-to-itself', written: name })))
  })

  it('leads to the end of a long row of blocks, and round a long circle of them', () => {
    const row = (last: string) =>
      `${Array.from({ length: 3000 }, (_, i) => `gear g${i} { like: g${i + 1} }`).join('\n')}\n${last}`
    const { blocks, problems } = read(row('gear g3000 { ratio: 2.5 }'))
    expect(problems).toEqual([])
    expect(factValue(blocks, 'g0.ratio')).toBe(2.5)
    const round = read(row('gear g3000 { like: g0 }')).problems
    expect(round.map(({ type }) => type)).toContain('refers-to-itself')
  })

  it('is not followed further than anybody means inside a block', () => {
    const feet = Array.from({ length: 3000 }, (_, i) => `foot f${i} { like: f${i + 1} }`)
    const found = read(`bed {\n${feet.join('\n')}\nfoot f3000 { across: 140 mm port }\n}`).problems
    expect(found.map(({ type }) => type)).toContain('chain-too-long')
  })

  it('of a block that only names it back is no circle', () => {
    const text = 'cable e { to: bus  from: house }\nprotection bus { in: e }\nbattery house { nominal: 48 V }'
    expect(typesOf(text)).toEqual([])
    expect(factValue(read(text).blocks, 'e.to')).toBe('bus')
    expect(factValue(read(text).blocks, 'bus.in')).toBe('e')
  })

  it.each([0, 1])('by the kind alone means the same whichever is read first (%i)', (first) => {
    const { file } = read('cable x { from: controller }\ncontroller { capacitance: cable.length }\n')
    const analysis = new Analysis()
    const { sections } = file.document
    for (const section of first === 0 ? sections : sections.toReversed()) analysis.bound(file, section)
    const told = sections.flatMap((section) => analysis.bound(file, section).problems)
    const types = told.map(({ problem }) => problem.type)
    expect(types).toEqual(['refers-to-itself'])
    expect(factValue(analysis.blocks(file), 'x.from')).toBe('controller')
  })

  it('of the value itself is told once', () => {
    expect(typesOf('drive d { reading r { gauge: gauge } }')).toContain('refers-to-itself')
    expect(typesOf('drive d { reading r { gauge: gauge } }')).not.toContain('unresolved')
  })

  it('that leads nowhere offers only what could be meant', () => {
    const text =
      'drive d { bed { adjuster: shims }  cable feed { conductor: 35 mm2 }  protection p { in: fed } }'
    const found = read(text).problems.filter(({ type }) => type === 'unresolved')
    expect(found).toMatchObject([{ path: 'fed', nearest: 'feed' }])
  })

  it('that two kinds have stands for the one that the fact is about', () => {
    const { blocks, file } = read(
      'drive d {\n  gear main { ratio: 2.5 }\n  motor main { power: 15 kW }\n  cable c { from: x  to: main }\n}',
    )
    const cable = blocks[0]?.children[2]
    const analysis = new Analysis()
    analysis.begin()
    expect(cable && referredBlock(cable, 'to', analysis.scope(file))?.kind).toBe('motor')
  })

  it('of what every object has is no reference of a block', () => {
    for (const word of ['constructor', 'toString', '__proto__', 'valueOf', 'hasOwnProperty']) {
      const { file } = read(`drive d { ${word} { on: x } }\n${word} y { }`)
      const analysis = new Analysis()
      analysis.begin()
      for (const section of file.document.sections)
        expect(() => referencesOf({ analysis, file }, section), word).not.toThrow()
      const types = typesOf(`gear spare { ratio: 2  ${word}: 1 }\ndrive d { gear { like: spare } }`)
      expect(types, word).not.toContain('source-unread')
    }
  })

  it('of a block of another kind is told as such', () => {
    expect(read('motor m { power: 15 kW }\ndrive d { gear { like: m } }').problems).toMatchObject([
      { type: 'unresolved', path: 'm', is: 'motor' },
    ])
  })

  it('of what every object has is not a fact, a kind or a place', () => {
    const words = ['constructor', 'toString', '__proto__', 'hasOwnProperty', 'valueOf']
    for (const word of words) {
      expect(typesOf(`seal { ${word}: 1 mm }`), word).toEqual(['unknown-fact'])
      expect(typesOf(`drive d { ${word} { x: 1 } }`), word).toContain('unknown-block')
      expect(typesOf(`drive d { gear { like: ${word} } }`), word).toContain('unresolved')
      expect(typesOf(`shaft-log { clearance: ${word} 1 mm, top 1 mm, port 1 mm }`), word).toEqual([
        'not-this-value',
      ])
      expect(typesOf(`seal { free-length: 1 ${word} }`), word).toEqual(['unknown-unit'])
    }
  })
})

describe('like', () => {
  const library = 'gear spare { ratio: 2.5  turns: opposite }\n'

  it('takes over what the block does not say itself', () => {
    const { blocks, problems } = read(`${library}drive d { gear { like: spare  ratio: 3 } }`)
    expect(problems).toEqual([])
    expect(factValue(blocks, 'd.gear.ratio')).toBe(3)
    expect(factValue(blocks, 'd.gear.turns')).toBe('opposite')
  })

  it('goes on through the block it names', () => {
    const { blocks } = read(
      `${library}gear other { like: spare  ratio: 4 }\ndrive d { gear { like: other } }`,
    )
    expect(factValue(blocks, 'd.gear.ratio')).toBe(4)
    expect(factValue(blocks, 'd.gear.turns')).toBe('opposite')
  })

  it('marks what is taken over where `like` stands, and says where it is written', () => {
    const { blocks } = read(`${library}drive d { gear { like: spare } }`)
    const ratio = blocks.find(({ name }) => name === 'd')?.children[0]?.facts.get('ratio')
    const text = (
      place: typeof ratio extends undefined ? never : NonNullable<typeof ratio>['at'] | undefined,
    ) => place?.section.text.slice(place.span.start, place.span.end)
    expect(text(ratio?.at)).toBe('spare')
    expect(text(ratio?.origin)).toBe('2.5')
  })

  it('of a block with a fact that cannot be read leaves that fact unknown, and says so where it is taken', () => {
    const bad = 'coupling standard { flange-diameter: 125 mm  gap-variation: max 0.10 kg }'
    const { blocks, problems } = read({
      'a.wright': 'use "b.wright"\ndrive d { coupling { like: standard } }',
      'b.wright': bad,
    })
    expect(problems).toMatchObject([{ type: 'source-unread', names: ['gap-variation'], written: 'standard' }])
    expect(blocks[0]?.children[0]?.unread).toContain('gap-variation')
  })

  it('of nothing leaves open what the block does not say itself', () => {
    expect(typesOf('drive d { gear { like: nothing  ratio: 2 } }')).toEqual(['unresolved'])
  })

  it('names a block of the same kind only', () => {
    expect(typesOf('motor m { power: 15 kW }\ndrive d { gear { like: m } }')).toContain('unresolved')
  })
})

describe('use', () => {
  it('makes the blocks of another file known', () => {
    const { blocks, problems } = read({
      'boats/a.wright': 'use "../parts/gears.wright"\ndrive d { gear { like: spare } }',
      'parts/gears.wright': 'gear spare { ratio: 2.5 }',
    })
    expect(problems).toEqual([])
    expect(factValue(blocks, 'd.gear.ratio')).toBe(2.5)
  })

  it('reaches through a library to those that it uses, its own file first', () => {
    const { blocks } = read({
      'a.wright': 'use "b.wright"\ndrive d { gear { like: spare } }\ndrive e { gear { like: deep } }',
      'b.wright': 'use "c.wright"\ngear spare { ratio: 2 }',
      'c.wright': 'gear spare { ratio: 3 }\ngear deep { ratio: 4 }',
    })
    expect(factValue(blocks, 'd.gear.ratio')).toBe(2)
    expect(factValue(blocks, 'e.gear.ratio')).toBe(4)
  })

  it('ends when files use each other in a circle, and each of them says so', () => {
    const round = {
      'a.wright': 'use "b.wright"\n',
      'b.wright': 'use "c.wright"\n',
      'c.wright': 'use "a.wright"\n',
    }
    const { file, problems } = read(round)
    expect(problems.map(({ type }) => type)).toEqual(['use-loop'])
    const inner = file.used.map((used) => used.problems.map(({ problem }) => problem.type))
    expect(inner).toEqual([['use-loop'], ['use-loop']])
    expect(typesOf({ 'a.wright': 'use "a.wright"' })).toEqual(['use-loop'])
  })

  it('of a circle that the file is not part of is not its own fault', () => {
    expect(
      typesOf({ 'a.wright': 'use "b.wright"', 'b.wright': 'use "c.wright"', 'c.wright': 'use "b.wright"' }),
    ).toEqual([])
  })

  it('that lets parts of two files lead round is told in both', () => {
    const files = {
      'a.wright': 'use "b.wright"\ngear a { like: b }',
      'b.wright': 'use "a.wright"\ngear b { like: a }',
    }
    expect(typesOf(files)).toEqual(['refers-to-itself', 'use-loop'])
    const [a, b] = Object.entries(files)
    expect(typesOf(Object.fromEntries([b, a] as [string, string][]))).toEqual([
      'refers-to-itself',
      'use-loop',
    ])
  })

  it.each([
    '../secret.wright',
    'x/../../secret.wright',
    '/etc/hostname',
    '\\\\server\\x.wright',
    'C:\\x.wright',
    'file:///x.wright',
    'https://example.com/x.wright',
    'a\u0000.wright',
  ])('never leaves the folder: %j', (path) => {
    expect(resolvePath('a.wright', path)).toBeUndefined()
  })

  it('says which file is not there', () => {
    expect(read('use "none.wright"').problems).toEqual([
      { type: 'use-missing', path: 'none.wright', written: '"none.wright"' },
    ])
  })
})

describe('a name given twice', () => {
  it('is found at the top of a file, however far apart', () => {
    const text =
      'battery house { nominal: 96 V }\ndrive d { gear { ratio: 2 } }\nbattery house { nominal: 48 V }'
    expect(read(text).problems).toMatchObject([
      { type: 'duplicate', what: 'house', written: 'battery house' },
    ])
  })

  it('is found for a block that stands once', () => {
    expect(typesOf('job "A" { }\ngear g { ratio: 2 }\njob "B" { }')).toContain('duplicate')
  })
})
