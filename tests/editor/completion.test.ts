import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../server/src/areas/index.ts'
import { Checker } from '../../server/src/checks/run.ts'
import { completion } from '../../server/src/editor/completion/completion.ts'
import { Analysis } from '../../server/src/job/analysis.ts'
import { locate, openDocument } from '../../server/src/job/document.ts'
import { linkFile } from '../../server/src/job/files.ts'
import { vocabulary } from '../../server/src/vocabulary/index.ts'
import { openFixture } from './fixture.ts'

const today = '2026-03-09'

function complete(marked: string, typed?: string) {
  const { workspace, open, position } = openFixture(marked)
  const at = locate(open.document, position)
  const file = workspace.link(open)
  const asking = {
    analysis: workspace.analysis,
    file,
    today,
    findings: () => new Checker(workspace.analysis, allChecks).check(file, { today }),
    paths: () => [...marked.matchAll(/^#- (.+)$/gm)].map(([, path = '']) => path),
  }
  const found = at && completion(asking, at.section, at.offset, { typed })
  const replaced = found && at.section.text.slice(found.replace.span.start, found.replace.span.end)
  return { offers: found?.offers ?? [], labels: found?.offers.map(({ label }) => label) ?? [], replaced }
}

const labels = (marked: string, typed?: string): readonly string[] => complete(marked, typed).labels

/** A drive with something to refer to, and a line of its own at the cursor. */
const drive = (inner: string): string => `battery house { nominal: 96 V }
drive main {
  shaft { diameter: 35 mm h9 }
  coupling { flange-diameter: 100 mm }
  motor port-motor { power: 15 kW  terminals: U, V, W }
  controller { terminals: A, B, C }
  bed {
    adjuster: shims
    foot aft { from-coupling: 200 mm  across: 140 mm port }
    foot fwd { from-coupling: 600 mm  across: 140 mm port }
  }
  reading dry-1 { taken: 2026-03-04  gauge: 0.02 mm  gaps: top 1 mm, bottom 1 mm, port 1 mm }
  reading dry-2 { taken: 2026-03-05  gauge: 0.02 mm  gaps: top 1 mm, bottom 1 mm, port 1 mm }
  ${inner}
}
`

describe('completion where something begins', () => {
  it.each(Object.values(vocabulary))('offers every fact of a $kind, the required first', (kind) => {
    const facts = Object.entries(kind.facts).filter(([name]) => !('bare' in kind && kind.bare === name))
    const required = facts.filter(([, { required }]) => required).map(([name]) => name)
    const offered = complete(`${kind.kind} {\n  $0\n}`).offers.filter(({ kind: of }) => of === 'fact')
    expect(offered.map(({ label }) => label).slice(0, required.length)).toEqual(required)
    expect(new Set(offered.map(({ label }) => label))).toEqual(new Set(facts.map(([name]) => name)))
  })

  it('offers no fact that is written, before or behind', () => {
    expect(labels('shaft {\n  length: 2 m\n  $0\n  material: a\n}')).toEqual(['diameter'])
  })

  it('offers no single block twice, and others again', () => {
    const offered = labels(drive('$0'))
    expect(offered).not.toContain('shaft')
    expect(offered).not.toContain('bed')
    expect(offered).toContain('seal')
    expect(offered).toContain('reading')
  })

  it('offers only what may stand there', () => {
    expect(labels('bed {\n  $0\n}').slice(0, 2)).toEqual(['adjuster', 'foot'])
    expect(labels('$0')).toContain('drive')
    expect(labels('$0')).not.toContain('foot')
    expect(labels('job "A" { vessel: "A" }\n$0')).not.toContain('job')
    expect(labels('widget {\n  $0\n}')).toEqual([])
  })

  it('replaces the word under the cursor', () => {
    expect(complete('shaft {\n  di$0am\n}')).toMatchObject({
      labels: ['diameter', 'length', 'material'],
      replaced: 'diam',
    })
  })

  it('leaves the value of a fact whose name is changed', () => {
    const [first] = complete('shaft {\n  dia$0: 35 mm\n}').offers
    expect(first?.insert).toEqual(['diameter'])
    const block = complete('sea$0 { }').offers.find(({ label }) => label === 'seal')
    expect(block?.insert).toEqual(['seal'])
  })

  it('works in an unfinished block, on one line, at the end, behind CRLF', () => {
    expect(labels('shaft {\n  $0')).toContain('diameter')
    expect(labels('shaft { length: 2 m  $0')).toEqual(['diameter', 'material'])
    expect(labels('shaft {\r\n  length: 2 m\r\n  $0\r\n}\r\n')).toEqual(['diameter', 'material'])
    expect(labels('drive a {\n  shaft {\n    len: : 2\n    $0\n\ndrive b {\n}')).toContain('diameter')
  })

  it('offers last what the block takes over from the one it is like', () => {
    const offered = complete(
      'shaft stock { diameter: 35 mm }\ndrive d {\n  shaft {\n    like: stock\n    $0\n  }\n}',
    ).offers
    expect(offered.map(({ label, detail }) => [label, detail])).toEqual([
      ['length', 'a length'],
      ['material', expect.anything()],
      ['diameter', 'inherited'],
    ])
  })

  it('offers the feet that a move has not named', () => {
    expect(labels(drive('move after dry-2 { aft: up 1 mm  $0 }'))).toEqual(['done', 'by', 'fwd'])
  })
})

describe('completion of a value', () => {
  it.each([
    ['words', 'coupling {\n  kind: $0\n}', ['rigid', 'flexible']],
    ['words behind a colon', 'coupling {\n  kind:$0\n}', ['rigid', 'flexible']],
    ['yes or no', 'coupling {\n  pilot: $0\n}', ['yes', 'no']],
    ['today', 'concession a/b {\n  until: $0\n}', [today]],
    ['today over half a date', 'concession a/b {\n  until: 2026-0$0\n}', [today]],
    ['what begins a limit', 'battery b {\n  window: $0\n}', ['max', 'min']],
    ['places still missing', 'reading r {\n  gaps: top 1 mm, $0, port 1 mm\n}', ['starboard', 'bottom']],
    ['a side', 'foot a {\n  across: 140 mm $0\n}', ['port', 'starboard']],
    ['the sign of a number of bolts', 'coupling {\n  bolts: 4 $0\n}', ['x']],
    ['ways to move', drive('move after dry-2 { aft: $0 }'), ['up', 'down', 'port', 'starboard', 'none']],
    ['terminals of the controller', drive('phase-map { $0 }'), ['A', 'B', 'C']],
    [
      'terminals that are no words in quotes',
      drive('phase-map { $0 }').replace('A, B, C', 'A, "1B", "1C"'),
      ['A', '"1B"', '"1C"'],
    ],
    [
      'those of them that are left',
      drive('phase-map { "1B" to U, $0 }').replace('A, B, C', 'A, "1B", "1C"'),
      ['A', '"1C"'],
    ],
    ['the word between terminals', drive('phase-map { A $0 }'), ['to']],
    ['terminals of the motor', drive('phase-map { A to U, B to $0 }'), ['V', 'W']],
    ['terminals no line has yet', drive('phase-map {\n    A to U\n    $0\n    B to V\n  }'), ['C']],
    [
      'motor terminals no line has yet',
      drive('phase-map {\n    A to U,\n    C to $0\n    B to V\n  }'),
      ['W'],
    ],
    ['the day it was measured', 'shaft { length: 2 m [measured $0', [today]],
    ['where it comes from', 'shaft { length: 2 m [$0', ['maker', 'measured', 'drawing', 'assumed']],
  ])('offers %s', (_, marked, wanted) => {
    expect(labels(marked)).toEqual(wanted)
  })

  it.each([
    ['shaft { diameter: 35 $0 }', 'mm', 'in', 'V'],
    ['shaft { diameter: 35 m$0 }', 'mm', 'thou', 'kg'],
    ['shaft { length: 2.65 $0 }', 'm', 'mm', 'deg'],
    ['job "A" { show-in: inch }\nshaft { length: 100 $0 }', 'in', 'm', 'lb'],
    ['shaft { diameter: 35$0 }', 'mm', 'ft', 'deg'],
    ['battery b { window: 84..108 $0 }', 'V', 'kV', 'A'],
    ['coupling { bolts: 4 x M10 class 8.8, 45 $0 }', 'N·m', 'lbf·ft', 'mm'],
    ['coupling { gap-variation: max 0.1 $0 }', 'mm', 'thou', 'N'],
    ['reading r { gaps: top 1.9 $0', 'mm', 'in', 'deg'],
    ['job "A" { show-in: inch }\nshaft { diameter: 2 $0 }', 'in', 'mm', 'lb'],
  ])('offers units that fit: %s', (marked, first, also, never) => {
    const offered = labels(marked)
    expect(offered[0]).toBe(first)
    expect(offered).toContain(also)
    expect(offered).not.toContain(never)
  })

  it.each([
    ['shaft { diameter: 2 $0 }', 'metric', ['mm', 'cm']],
    ['shaft { diameter: 2 $0 }', 'inch', ['in', 'thou']],
    ['motor { power: 5 $0 }', 'inch', ['hp', 'kW']],
    ['battery { internal-resistance: 12 $0 }', 'inch', ['ohm', 'mohm']],
  ])('offers units of the system of the job first: %s in %s', (marked, system, first) => {
    expect(labels(`job "A" { show-in: ${system} }\n${marked}`).slice(0, 2)).toEqual(first)
  })

  it.each([
    'shaft {\n  diameter: 35 mm$0\n}',
    'shaft {\n  diameter: 35 mm h9$0\n}',
    'shaft {\n  diameter: 35 mm +0.02/-0$0\n}',
    'shaft {\n  length: 2 m [measured$0',
    'gear {\n  ratio: 2$0\n}',
    'coupling {\n  kind: flexible$0\n}',
    'reading r {\n  taken: 2026-03-04$0\n}',
    drive('protection p { in: house$0 }'),
    drive('move after dry-2$0 { }'),
    drive('drive aft-port$0'),
  ])('offers nothing at the end of what is whole: %j', (marked) => {
    expect(labels(marked)).toEqual([])
  })

  it('offers units in which the number is more than there can be behind the others', () => {
    const offered = labels('coupling { flange-diameter: 5 $0 }')
    expect(offered.indexOf('in')).toBeLessThan(offered.indexOf('m'))
    expect(offered).toContain('km')
  })

  it('offers classes of ISO 286 behind a size', () => {
    expect(labels('shaft {\n  diameter: 35 mm $0\n}')).toContain('h9')
  })

  it('offers turns and flats of a nut before lengths where the feet stand on nuts, else behind them', () => {
    const onShims = drive('move after dry-2 { aft: up 2 $0 }')
    const onNuts = onShims.replace('adjuster: shims', 'adjuster: stud-and-nuts  thread: M16')
    expect(labels(onNuts).slice(0, 3)).toEqual(['flats', 'turns', 'mm'])
    expect(labels(onShims)[0]).toBe('mm')
    expect(labels(onShims).slice(-2)).toEqual(['flats', 'turns'])
    expect(labels(onShims)).not.toContain('deg')
    expect(labels(drive('move after dry-2 { aft: up 1 turn 2 $0 }'))).toEqual(['flats'])
  })

  it.each([
    ['aft: up 1 turn, $0', ['port', 'starboard']],
    ['aft: up 0.3 mm, $0', ['port', 'starboard']],
    ['aft: port 0.2 mm, $0', ['up', 'down']],
    ['aft: down 1 flat, port 0.2 mm, $0', []],
    ['aft: none, $0', []],
  ])('offers each way once: %s', (line, wanted) => {
    expect(labels(drive(`move after dry-2 {\n    ${line}\n  }`))).toEqual(wanted)
  })

  it('offers nothing in comments, in texts, behind an unknown fact', () => {
    expect(labels('shaft { # dia$0\n}')).toEqual([])
    expect(labels('job "$0" { }')).toEqual([])
    expect(labels('job "a" {\n  vessel: "$0"\n}')).toEqual([])
    expect(labels('shaft {\n  colour: $0\n}')).toEqual([])
  })
})

describe('completion of a name', () => {
  it('offers blocks of the kinds that the fact refers to', () => {
    expect(labels(drive('cable feed { from: $0 }'))).toEqual(['port-motor', 'controller', 'house'])
    expect(labels(drive('protection f { in: $0 }'))).toEqual([])
    expect(labels(drive('cable feed { from: main.$0 }'))).toEqual(['main.port-motor', 'main.controller'])
    expect(labels(`${drive('')}concession a/b {\n  on: $0\n}`)).toEqual(['house', 'main'])
  })

  it('offers blocks of used files, and what is in a block behind its dot', () => {
    const library = `#- parts/shafts.wright
shaft stock { diameter: 35 mm }
#- boat.wright
use "parts/shafts.wright"
drive other {
  shaft { diameter: 30 mm }
}
`
    expect(labels(`${library}drive d {\n  shaft {\n    like: $0\n  }\n}`)).toEqual(['stock', 'other.shaft'])
    expect(labels(`${drive('')}concession a/b {\n  on: main.d$0\n}`)).toContain('main.dry-2')
  })

  it('offers facts with amounts of the kind in an arithmetic', () => {
    expect(labels(drive('shaft-log { bore: 2 * $0 }'))).toContain('shaft.diameter')
    expect(labels(drive('shaft-log { bore: shaft.$0 }'))).toEqual(['shaft.diameter'])
    expect(labels(drive('shaft-log { bore: 2 * $0 }'))).not.toContain('port-motor.power')
  })

  it('offers the readings behind `move after`, the last first', () => {
    expect(labels(drive('move $0'))).toEqual(['after dry-2', 'after dry-1'])
    expect(labels(drive('move after $0 { }'))).toEqual(['dry-2', 'dry-1'])
  })

  it('offers the checks whose findings may be accepted', () => {
    const offered = complete('concession al$0')
    expect(offered.replaced).toBe('al')
    expect(offered.labels).toContain('alignment/gap-variation-outside')
    expect(offered.labels).not.toContain('job/unit-missing')
    expect(offered.offers.every(({ label }) => allChecks.some(({ id }) => id === label))).toBe(true)
  })

  it('offers first the checks that find something, and where', () => {
    const job = `${drive('').replace('shaft { diameter: 35 mm h9 }', 'shaft { length: 2 m }')}concession `
    const { offers } = complete(`${job}$0 { }\n`)
    const found = offers.findIndex(({ detail }) => !detail?.includes('found in this file'))
    expect(found).toBeGreaterThan(0)
    const first = offers.slice(0, found).map(({ label }) => label)
    expect(first).toEqual(['alignment/feet-on-one-side', 'alignment/too-few-angles'])
    expect(labels(`${job}alignment/too-few-angles {\n  on: $0\n}\n`).slice(0, 3)).toEqual([
      'main.dry-1',
      'main.dry-2',
      'house',
    ])
    expect(labels(`${job}alignment/too-few-angles {\n  on: main.dry$0\n}\n`)[0]).toBe('main.dry-1')
    expect(labels(`${job}alignment/offset-outside {\n  on: $0\n}\n`)).toEqual(['house', 'main'])
  })

  it('offers what has to be said of a concession before what may be', () => {
    expect(labels('concession a/b {\n  $0\n}').slice(0, 4)).toEqual(['on', 'granted-by', 'until', 'reason'])
  })

  // ISO 262 (coarse sizes), ASME B1.1 (UNC), IEC 60228 (sections), 33 CFR 183.425 table 5 (gauges, ratings of the insulation).
  it.each([
    ['bed {\n  thread: $0\n}', 'metric', ['M6', 'M8', 'M10'], 'M24'],
    ['bed {\n  thread: $0\n}', 'inch', ['"1/4-20 UNC"', '"5/16-18 UNC"', '"3/8-16 UNC"'], '"1-8 UNC"'],
    ['cable a {\n  conductor: $0\n}', 'metric', ['1.5 mm2', '2.5 mm2', '4 mm2'], '95 mm2'],
    ['cable a {\n  conductor: $0\n}', 'inch', ['18 AWG', '16 AWG', '14 AWG'], '4/0 AWG'],
    ['cable a {\n  insulation: $0\n}', 'metric', ['60 degC', '75 degC', '80 degC'], '105 degC'],
  ])('offers the values that are made: %s in %s', (marked, system, first, later) => {
    const offered = labels(`job "A" { show-in: ${system} }\n${marked}`)
    expect(offered.slice(0, 3)).toEqual(first)
    expect(offered).toContain(later)
  })

  it('offers them only where the value begins', () => {
    expect(labels('cable a {\n  conductor: 70 $0\n}')).not.toContain('1.5 mm2')
    expect(labels('cable a {\n  conductor: 2 * $0\n}')).not.toContain('1.5 mm2')
    expect(labels('cable a {\n  conductor: $0\n}', ' ')).toEqual([])
  })

  it('offers the files of the folder, relative, in quotes where there are none', () => {
    const files = '#- parts/a.wright\n#- boats/b.wright\n#- boats/c.wright\nuse "parts/x$0"\n'
    expect(labels(files)).toEqual(['../parts/a.wright', 'b.wright'])
    expect(complete(files.replace('"parts/x$0"', '$0')).offers[0]?.insert).toEqual(['"../parts/a.wright"'])
  })
})

describe('completion as characters are typed', () => {
  it.each([
    ['shaft { diameter: 35 mm $0 }', ' '],
    ['shaft {\n $0\n}', ' '],
    ['shaft {\n  length: $0\n}', ' '],
    ['shaft {\n  length:$0\n}', ':'],
    ['shaft {\n  length: 2.$0\n}', '.'],
    ['coupling {\n  gap-variation: $0\n}', ' '],
    ['gear {\n  ratio: 2.5 $0\n}', ' '],
    ['propeller {\n  blades: 3 $0\n}', ' '],
  ])('is not in the way: %s', (marked, typed) => {
    expect(labels(marked, typed)).toEqual([])
  })

  it.each([
    ['coupling {\n  kind: $0\n}', ' ', 'flexible'],
    ['shaft { length: 35 $0 }', ' ', 'mm'],
    ['reading r {\n  gaps: top 1 mm, $0\n}', ' ', 'bottom'],
    ['use "$0"\n#- a.wright\n', '"', 'a.wright'],
    ['concession alignment/$0 { }', '/', 'alignment/offset-outside'],
    ['shaft { length: 2 m [$0', '[', 'maker'],
  ])('comes where something has to stand: %s', (marked, typed, wanted) => {
    expect(labels(marked, typed)).toContain(wanted)
  })
})

describe('completion anywhere', () => {
  const demo = resolve(import.meta.dirname, '../../docs/examples/survey-launch-as-found.wright')
  const text = readFileSync(demo, 'utf8')

  const answersIn = (source: string, at: number) => {
    const analysis = new Analysis()
    analysis.begin()
    const file = linkFile('demo.wright', openDocument(source), () => undefined)
    let start = 0
    for (const section of file.document.sections) {
      const offset = at - start
      start += section.text.length
      if (offset < 0 || offset > section.text.length) continue
      const found = completion(
        { analysis, file, today, paths: () => [], findings: () => [] },
        section,
        offset,
      )
      if (!found) continue
      const { span } = found.replace
      expect(span.start).toBeLessThanOrEqual(offset)
      expect(span.end).toBeGreaterThanOrEqual(offset)
      expect(span.end).toBeLessThanOrEqual(section.text.length)
      expect(found.replace.section.text.slice(span.start, span.end)).not.toMatch(/[\r\n]/)
    }
  }

  it('answers within the text at every place of any prefix of a demo', () => {
    fc.assert(
      fc.property(fc.nat(text.length), fc.nat(60), (length, back) => {
        answersIn(text.slice(0, length), Math.max(0, length - back))
      }),
      { numRuns: 150 },
    )
  })

  it('answers within any text', () => {
    const noise = fc.string({
      unit: fc.constantFrom(...'ab1 .:,{}[]"#\n\r/-±', 'gaps:', 'use "', 'shaft {', '2026-'),
    })
    fc.assert(fc.property(noise, fc.nat(40), (source, at) => answersIn(source, Math.min(at, source.length))))
  })
})
