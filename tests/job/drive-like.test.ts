// A drive that is `like` another takes its blocks. Expected: what the same drive gives when it is written out.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { Analysis } from '../../server/src/job/analysis.ts'
import { edit, openDocument } from '../../server/src/job/document.ts'
import { linkFile } from '../../server/src/job/files.ts'
import type { Block } from '../../server/src/job/model.ts'
import { factValue, read } from './meaning.ts'

const port = `drive port {
  battery: house
  propeller { diameter: 480 mm  pitch: 360 mm  blades: 4  turns: left-hand }
  shaft { like: stock-40  length: 3.10 m }
  shaft-log { bore: 60 mm  clearance: top 12 mm, starboard 12 mm, bottom 12 mm, port 12 mm }
  seal {
    shaft-size:    shaft.diameter
    compression:   26 mm +3/-2 mm [maker]
    free-length:   156 mm [measured 2026-05-02]
    fitted-length: 129 mm
  }
  coupling { flange-diameter: 140 mm  gauge-diameter: seal.free-length - 27 mm  gap-variation: max 0.1 mm }
  motor propulsion { power: 20 kW }
  controller { input: 120..170 V }
  bed {
    adjuster: shims
    foot aft-port { from-coupling: 210 mm  across: 160 mm port  pack: 3 mm }
    foot aft-stbd { from-coupling: 210 mm  across: 160 mm starboard }
  }
  target { shaft-droop: 0.1 mm }
  reading dry-1 { taken: 2026-05-11  gauge: 0.02 mm }
  move after dry-1 { aft-port: up 1 mm }
  cable feed { from: house  to: controller  conductor: 70 mm2  length: 3.2 m  insulation: 105 degC }
  protection main-fuse { rating: 250 A  in: feed }
  phase-map { A to U, B to V, C to W }
}
`
const around = `battery house { nominal: 144 V }
shaft stock-40 { diameter: 40 mm h9  material: duplex-1-4462 }
`
const job = (starboard: string) =>
  read(`${around}${port}drive starboard { like: port
 ${starboard} }\n`)
const drive = ({ blocks }: { readonly blocks: readonly Block[] }, name = 'starboard') =>
  blocks.find((block) => block.name === name)
const inside = (block: Block | undefined): string[] =>
  (block?.children ?? []).flatMap((child) => [child.path, ...inside(child)])
const value = ({ blocks }: { readonly blocks: readonly Block[] }, path: string) =>
  factValue(blocks, `starboard.${path}`)

describe('a drive that is like another', () => {
  it('takes its blocks and the blocks inside them, but no log, no target and no phase map', () => {
    expect(inside(drive(job('')))).toEqual([
      'starboard.propeller',
      'starboard.shaft',
      'starboard.shaft-log',
      'starboard.seal',
      'starboard.coupling',
      'starboard.propulsion',
      'starboard.controller',
      'starboard.bed',
      'starboard.bed.aft-port',
      'starboard.bed.aft-stbd',
      'starboard.feed',
      'starboard.main-fuse',
    ])
  })

  it('takes facts of the drive itself', () => expect(value(job(''), 'battery')).toBe('house'))

  it('says its own facts first, block by block and fact by fact', () => {
    const own = job('propeller { pitch: 350 mm }  bed { foot aft-port { from-coupling: 230 mm } }')
    expect(value(own, 'propeller.pitch')).toBeCloseTo(0.35, 12)
    expect(value(own, 'propeller.diameter')).toBeCloseTo(0.48, 12)
    expect(value(own, 'bed.aft-port.from-coupling')).toBeCloseTo(0.23, 12)
    expect(value(own, 'bed.aft-port.across')).toBeCloseTo(-0.16, 12)
    expect(value(own, 'bed.aft-stbd.from-coupling')).toBeCloseTo(0.21, 12)
  })

  it('takes nothing that was measured, found at one machine, or differs by hand', () => {
    const own = job('')
    for (const path of [
      'seal.free-length',
      'seal.fitted-length',
      'propeller.turns',
      'shaft-log.clearance',
      'bed.aft-port.pack',
    ])
      expect([path, value(own, path)]).toEqual([path, undefined])
    expect(value(own, 'shaft-log.bore')).toBeCloseTo(0.06, 12)
  })

  it('asks for what it does not take, once, with where the other drive says it', () => {
    const asked = job('').problems.filter(({ type }) => type === 'not-taken')
    expect(asked).toMatchObject([{ written: 'port', from: 'port' }])
    const missing = (starboard: string) =>
      job(starboard).problems.flatMap((problem) =>
        problem.type === 'not-taken' ? problem.missing.map(({ path }) => path) : [],
      )
    expect(missing('')).toEqual([
      'target',
      'phase-map',
      'propeller.turns',
      'shaft-log.clearance',
      'seal.free-length',
      'seal.fitted-length',
      'bed.aft-port.pack',
    ])
    expect(
      missing(`propeller { turns: right-hand }  phase-map { A to U }  target { shaft-droop: 0 mm }
        seal { free-length: 150 mm  fitted-length: 123 mm }  bed { foot aft-port { pack: 2 mm } }`),
    ).toEqual(['shaft-log.clearance'])
  })

  it('works arithmetic out with its own facts', () => {
    const own = job('shaft { diameter: 45 mm }  seal { free-length: 150 mm [measured] }')
    expect(value(own, 'seal.shaft-size')).toBeCloseTo(0.045, 12)
    expect(value(own, 'coupling.gauge-diameter')).toBeCloseTo(0.123, 12)
    const gauge = drive(own)
      ?.children.find(({ kind }) => kind === 'coupling')
      ?.facts.get('gauge-diameter')
    const { section, span } = gauge?.origin ?? { section: undefined, span: undefined }
    expect(section?.text.slice(span?.start, span?.end)).toBe('seal.free-length - 27 mm')
  })

  it('says nothing more of a fact that is worked out from one it does not take', () => {
    expect(job('').problems.map(({ type }) => type)).toEqual(['not-taken'])
    expect(
      drive(job(''))
        ?.children.find(({ kind }) => kind === 'coupling')
        ?.unread.has('gauge-diameter'),
    ).toBe(true)
  })

  it('finds the names in what it takes among its own blocks first', () => {
    const own = job('cable feed { length: 4 m }')
    const fuse = drive(own)?.children.find(({ name }) => name === 'main-fuse')
    expect(fuse?.facts.get('in')?.value).toBe('feed')
    expect(value(own, 'feed.length')).toBeCloseTo(4, 12)
    expect(value(own, 'feed.conductor')).toBeCloseTo(70e-6, 12)
  })

  it('keeps to the other drive where that is named', () => {
    const own = read(`drive port { shaft { diameter: 40 mm }  seal { shaft-size: port.shaft.diameter } }
drive starboard { like: port
 shaft { diameter: 45 mm } }`)
    expect(value(own, 'seal.shaft-size')).toBeCloseTo(0.04, 12)
  })

  it('goes by its own facts, then the part a block is like, then the other drive', () => {
    const own = read(`shaft stock-40 { diameter: 40 mm  material: bronze }
shaft stock-45 { diameter: 45 mm }
drive port { shaft { like: stock-40  length: 3 m } }
drive starboard { like: port
 shaft { like: stock-45 } }`)
    expect(value(own, 'shaft.diameter')).toEqual({ nominal: 0.045 })
    expect(value(own, 'shaft.length')).toBeCloseTo(3, 12)
    expect(value(own, 'shaft.material')).toBe('bronze')
  })

  it('does not take a hand or a measurement by way of a part either', () => {
    const own = read(`propeller stock { diameter: 480 mm  turns: left-hand  mass: 9 kg [measured] }
drive port { propeller { like: stock } }
drive starboard { like: port }`)
    expect(value(own, 'propeller.diameter')).toBeCloseTo(0.48, 12)
    expect(value(own, 'propeller.turns')).toBeUndefined()
    expect(own.problems).toMatchObject([
      { type: 'not-taken', from: 'stock', missing: [{ path: 'mass' }] },
      {
        type: 'not-taken',
        from: 'port',
        missing: [{ path: 'propeller.mass' }, { path: 'propeller.turns' }],
      },
    ])
  })

  it.each([
    ['seal { like: port.seal }', ['free-length', 'fitted-length']],
    ['seal { like: port.seal  free-length: 150 mm [measured] }', ['fitted-length']],
    ['propeller { like: port.propeller }', ['turns']],
    ['phase-map { like: port.phase-map }', ['pairs']],
    ['target { like: port.target }', ['shaft-droop']],
    ['shaft-log { like: port.shaft-log }', ['clearance']],
    ['shaft { like: port.shaft }', []],
  ])('asks a block with its own `like` for the same: %s', (block, asked) => {
    const own = read(`${around}${port}drive starboard { ${block} }\n`)
    expect(
      own.problems.flatMap((problem) =>
        problem.type === 'not-taken' ? problem.missing.map(({ path }) => path) : [],
      ),
    ).toEqual(asked)
    const [kind = ''] = block.split(' ')
    for (const fact of asked) expect(value(own, `${kind}.${fact}`)).toBeUndefined()
  })

  it('takes a part at the top level as a specification, but for what was measured and what is found when it is fitted', () => {
    const own = read(`propeller stock { diameter: 480 mm  turns: left-hand  mass: 9 kg [measured] }
seal bellows { free-length: 150 mm  fitted-length: 123 mm }
drive starboard { propeller { like: stock }  seal { like: bellows } }`)
    expect(value(own, 'propeller.turns')).toBe('left-hand')
    expect(value(own, 'propeller.mass')).toBeUndefined()
    expect(value(own, 'seal.free-length')).toBeCloseTo(0.15, 12)
    expect(value(own, 'seal.fitted-length')).toBeUndefined()
  })

  it('lets the parts of one drive be like each other', () => {
    const own = read(`drive starboard {
 bearing a { at: 1 m  bore: 35 mm [measured] }
 bearing b { like: a  at: 2 m } }`)
    expect(own.problems).toEqual([])
  })

  it.each([
    'reading dry-3 { like: dry-1 }',
    'reading dry-1 { like: port.dry-1  taken: 2026-05-12 }',
    'move after dry-1 { like: port.dry-1 }',
  ])('lets no record be like another: %s', (record) => {
    const own = read(`${around}${port}drive starboard { ${record} }\n`)
    expect(own.problems.filter(({ type }) => type === 'record-like')).toHaveLength(1)
    expect(drive(own)?.children[0]?.facts.get('gauge')).toBeUndefined()
  })

  it('takes through a chain, each drive before the one it is like', () => {
    const own = read(`drive a { shaft { diameter: 40 mm  length: 3 m }  gear { ratio: 2 } }
drive b { like: a
 shaft { length: 4 m } }
drive starboard { like: b
 gear { ratio: 3 } }`)
    expect(['shaft.diameter', 'shaft.length', 'gear.ratio'].map((path) => value(own, path))).toEqual([
      { nominal: 0.04 },
      4,
      3,
    ])
  })

  it.each([
    'drive a { gear { ratio: 2 } }  drive starboard { like: a }',
    'drive starboard { like: a }  drive a { gear { ratio: 2 } }',
    'drive starboard { like: a }\ndrive a { gear { ratio: 2 } }',
  ])('takes from a drive before or after it: %j', (text) => expect(value(read(text), 'gear.ratio')).toBe(2))

  it('takes a drive of another file', () => {
    const own = read({
      'a.wright': 'use "parts.wright"\ndrive starboard {\n like: standard\n gear { turns: same }\n}',
      'parts.wright': 'drive standard { gear { ratio: 2 } }',
    })
    expect(value(own, 'gear.ratio')).toBe(2)
  })

  it.each(['', ' power: 15 kW '])(
    'is one motor with the only one of the other drive, whatever its name: {%s}',
    (said) => {
      const own = job(`motor aft {${said}}`)
      expect(drive(own)?.children.filter(({ kind }) => kind === 'motor')).toMatchObject([{ name: 'aft' }])
      expect(job(`motor {${said}}`).problems.map(({ type }) => type)).toEqual(['not-taken'])
      expect(
        drive(job(`motor {${said}}`))?.children.some(({ path }) => path === 'starboard.propulsion'),
      ).toBe(true)
    },
  )

  it('has a block of another name beside those it takes, and says so', () => {
    const own = job(
      'cable stbd-feed { from: house  to: controller  conductor: 70 mm2  length: 3 m  insulation: 105 degC }',
    )
    expect(own.problems.map(({ type }) => type)).toEqual(['block-added', 'not-taken'])
    expect(inside(drive(own))).toEqual(expect.arrayContaining(['starboard.feed', 'starboard.stbd-feed']))
  })

  it('says which names now belong to two blocks', () => {
    expect(job('cable propulsion { }').problems).toContainEqual(
      expect.objectContaining({ type: 'duplicate', what: 'propulsion' }),
    )
  })

  it('says where what it takes does not hold for it', () => {
    const own =
      read(`drive port { cable feed { from: port.controller  to: propulsion }  motor propulsion { }  controller { } }
drive starboard { like: port
 motor aft { } }`)
    const unresolved = own.problems.filter(({ type }) => type === 'unresolved')
    expect(unresolved).toMatchObject([{ path: 'propulsion', written: 'port' }])
  })

  it('says once for each block what the other drive has written and cannot be read', () => {
    const own = read(`drive port { gear { ratio: 2 mm  turns: sideways } }
drive starboard { like: port }`)
    expect(own.problems.filter(({ type }) => type === 'source-unread')).toMatchObject([
      { path: 'port.gear', names: ['ratio', 'turns'], written: 'port' },
    ])
  })

  it.each([
    ['drive a { like: b }\ndrive b { like: a }', ['refers-to-itself', 'refers-to-itself']],
    ['drive a { like: a }', ['refers-to-itself']],
    ['drive a { like: b }  drive b { like: a }', ['refers-to-itself', 'source-unread']],
    ['drive a { like: b }\ndrive b { like: c }', ['source-unread', 'unresolved']],
    ['drive a { like: b }', ['unresolved']],
    ['drive a { like: }', []],
    ['drive a { like: ? }', []],
    ['motor b { power: 1 kW }\ndrive a { like: b }', ['unresolved']],
  ])('says what is wrong with what it is like: %j', (text, types) =>
    expect(read(text).problems.map(({ type }) => type)).toEqual(types),
  )

  it('follows a chain of drives as far as anybody means, and finds a circle of a thousand', () => {
    const row = (count: number, last: string) =>
      `${Array.from({ length: count }, (_, i) => `drive d${i} { like: d${i + 1} }\n`).join('')}drive d${count} { ${last} }\n`
    const open = read(row(32, 'gear { ratio: 2 }'))
    expect(open.problems).toEqual([])
    expect(factValue(open.blocks, 'd0.gear.ratio')).toBe(2)
    expect(read(row(33, 'gear { ratio: 2 }')).problems).toMatchObject([
      { type: 'chain-too-long', written: 'd1' },
    ])
    expect(read(row(1000, 'like: d0')).problems.map(({ type }) => type)).toContain('refers-to-itself')
  }, 60_000)

  it('is worked out again when the other drive changes, and not when anything else does', () => {
    const analysis = new Analysis()
    const boundOf = (document: ReturnType<typeof openDocument>, at: number) => {
      analysis.begin()
      const file = linkFile('a.wright', document, () => undefined)
      return file.document.sections.map((section) => analysis.bound(file, section))[at]
    }
    const text = `drive port { gear { ratio: 2 } }\ndrive starboard { like: port }\ngear other { ratio: 3 }\n`
    const first = openDocument(text)
    const before = boundOf(first, 1)
    const elsewhere = edit(first, text.indexOf('3'), text.indexOf('3') + 1, '4')
    expect(boundOf(elsewhere, 1)).toBe(before)
    const changed = edit(elsewhere, text.indexOf('2'), text.indexOf('2') + 1, '5')
    const after = boundOf(changed, 1)
    expect(factValue(after?.blocks ?? [], 'starboard.gear.ratio')).toBe(5)
  })
})

describe('a drive that takes everything', () => {
  const facts: Readonly<Record<string, readonly string[]>> = {
    gear: ['ratio: 2.5', 'turns: same', 'efficiency: 97 %', 'ratio: 2 mm'],
    shaft: ['diameter: 40 mm h9', 'length: 3 m', 'material: bronze', 'like: stock'],
    seal: [
      'shaft-size: shaft.diameter',
      'free-length: 150 mm',
      'shaft-size: free-length - 114 mm',
      'compression: max 3 V',
    ],
    motor: ['power: 15 kW', 'speed: 1500 rpm', 'terminals: U, V, W', 'efficiency: 3'],
    'cable feed': [
      'from: house',
      'to: motor',
      'length: shaft.length * 2',
      'conductor: 35 mm2',
      'insulation: 90 degC',
    ],
    'bearing stern': ['at: 0.2 m', 'bore: shaft.diameter + 1 mm', 'length: shaft.length / 20'],
    bed: ['adjuster: shims', 'thread: M16', 'foot aft { from-coupling: 200 mm  across: 100 mm port }'],
  }
  const blocks = fc
    .tuple(
      ...Object.entries(facts).map(([head, lines]) =>
        fc.subarray([...lines]).map((said) => ({ head, said })),
      ),
    )
    .chain((all) => fc.shuffledSubarray(all))
    .map((all) =>
      all
        .map(({ head, said }) => `  ${head} {\n${said.map((line) => `    ${line}\n`).join('')}  }\n`)
        .join(''),
    )

  const said = (block: Block | undefined): unknown =>
    block && {
      path: block.path.replace(/^\w+/, ''),
      facts: Object.fromEntries(
        [...block.facts].map(([name, { value: v, provenance }]) => [name, [v, provenance]]),
      ),
      inside: block.children.map(said),
    }

  it('says what it says when it is written out', () => {
    fc.assert(
      fc.property(blocks, (text) => {
        const rest = 'battery house { nominal: 96 V }\nshaft stock { diameter: 35 mm  length: 2 m }\n'
        const taking = read(`${rest}drive port {\n${text}}\ndrive starboard { like: port }\n`)
        const whole = read(`${rest}drive port {\n${text}}\ndrive starboard {\n${text}}\n`)
        const plain = (of: typeof taking) =>
          JSON.stringify(said(drive(of)), (key, v) => (key === 'span' ? undefined : v))
        const sorted = (json: string) =>
          JSON.parse(json, (key, v) =>
            key === 'facts'
              ? Object.fromEntries(Object.entries(v).sort(([a], [b]) => a.localeCompare(b, 'en')))
              : v,
          )
        expect(sorted(plain(taking))).toEqual(sorted(plain(whole)))
      }),
      { numRuns: 200 },
    )
  })

  it('never fails, whatever is taken from whatever', () => {
    const some = fc.constantFrom('a', 'b', 'c', 'd')
    const lines = fc.array(
      fc.oneof(
        some.map((name) => `like: ${name}`),
        some.map((name) => `shaft { length: ${name}.shaft.length + 1 mm }`),
        some.map((name) => `motor ${name} { like: ${name}.motor }`),
        fc.constantFrom(
          'motor { power: power }',
          'gear { ratio: 2 [measured] }',
          'shaft { length: 2 m',
          'bed { foot f { like: f } }',
          'cable m { from: m }',
          'phase-map { A to U }',
          '}',
        ),
      ),
      { maxLength: 5 },
    )
    fc.assert(
      fc.property(fc.array(fc.tuple(some, lines, fc.boolean()), { maxLength: 6 }), (drives) => {
        const text = drives
          .map(([name, inner, apart]) => `drive ${name} { ${inner.join('\n  ')} }${apart ? '\n' : '  '}`)
          .join('')
        const first = read(text)
        expect(first.problems.length).toBeGreaterThanOrEqual(0)
        // The order of reading never shows.
        const analysis = new Analysis()
        analysis.begin()
        const backwards = [...first.file.document.sections]
          .reverse()
          .flatMap((section) => analysis.bound(first.file, section).problems)
        expect(backwards.map(({ problem }) => problem.type).sort()).toEqual(
          first.problems.map(({ type }) => type).sort(),
        )
      }),
      { numRuns: 300 },
    )
  })
})
