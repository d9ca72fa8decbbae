import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../server/src/areas/index.ts'
import { hover } from '../../server/src/editor/hover/hover.ts'
import { Analysis } from '../../server/src/job/analysis.ts'
import { openDocument } from '../../server/src/job/document.ts'
import { linkFile } from '../../server/src/job/files.ts'
import { vocabulary } from '../../server/src/vocabulary/index.ts'
import { checkHover, hoverAt } from './fixture.ts'

const examples = resolve(import.meta.dirname, '../../docs/examples')

describe('hover on words of the language', () => {
  it.each(Object.values(vocabulary))('says what a $kind is, with its example', ({ kind, doc, example }) => {
    checkHover(`$0${kind} {\n}\n`, `**${kind}**`, doc, example)
  })

  it('says which blocks may stand in it', () => {
    checkHover('be$0d { }', 'Blocks: `foot`')
    checkHover('dri$0ve main { }', '`propeller`', '`reading`', '`move`', '`phase-map`')
  })

  const facts = Object.values(vocabulary).flatMap(({ kind, facts }) =>
    Object.entries(facts).map(([name, { doc, example, shape }]) => ({ kind, name, doc, example, shape })),
  )
  it.each(facts)('says what $kind.$name is, what is expected and how it is written', (fact) => {
    const { kind, name, doc, example, shape } = fact
    checkHover(
      `${kind} {\n  ${name}$0: ${example}\n}`,
      doc,
      `Expected: ${shape.words}`,
      `${name}: ${example}`,
    )
  })

  it('says the range that is allowed', () => {
    checkHover('shaft { dia$0meter: 35 mm }', 'Allowed: 5 mm to 600 mm')
  })

  it('keeps what the writer says about a block apart from Markdown', () => {
    checkHover('## see <b>the</b> *drawing*\nseal bel$0lows { }', 'see \\<b\\>the\\</b\\> \\*drawing\\*')
  })

  it('says what `like`, `use` and provenance mean', () => {
    checkHover('shaft { li$0ke: stock }', 'inherits from')
    checkHover('u$0se "parts.wright"\n', 'must stay inside the workspace folder')
    checkHover('shaft { diameter: 35 mm [ma$0ker] }', 'Where the value comes from')
  })
})

describe('hover on what is not known yet', () => {
  it.each([
    'shaft { diameter: $0? mm h9 }',
    'shaft { material: $0? }',
    'drive d { reading r { gaps: top ?$0 mm, port 1 mm } }',
    'drive d { phase-map { A to $0?, B to V } }',
  ])('%s', (job) => {
    checkHover(job, '**Not known yet**', 'the fact counts as missing')
  })
})

describe('hover on an amount', () => {
  it('converts it: 1 in = 25.4 mm exactly (NIST SP 811, B.8)', () => {
    checkHover('shaft { length: 1$0 in }', '`1 in` is 25.4 mm')
    checkHover('shaft { length: 3$0/4 in }', '19.05 mm')
  })

  it('says nothing twice: other units only', () => {
    expect(hoverAt('shaft { diameter: 35.2$00 mm }')?.markdown).toMatch(/^`35.20 mm` is 1.386 in$/m)
  })

  it('gives the size and the source of a unit: 1 lbf·ft = 1.355 818 N·m (NIST SP 811, B.8)', () => {
    checkHover('coupling { rated-torque: 300 lbf$0·ft }', '1 lbf·ft = 1.3558179 N·m', 'NIST SP 811')
    checkHover('shaft { length: 1 i$0n }', '1 in = 0.0254 m')
    checkHover('cable c { conductor: 2/0 A$0WG }', 'American wire gauge', 'ASTM B258')
  })

  it('works out the limits of a class: 35 h9 is 0 to -62 µm (ISO 286-2)', () => {
    checkHover('shaft { diameter: 35 mm h$09 }', 'limits 34.938 mm to 35 mm')
  })

  it('works out two-sided limits', () => {
    checkHover('seal { compression: 26$0 mm +3/-2 mm [maker] }', '24 mm to 29 mm', 'From: maker')
  })

  it('takes a size with its tolerance for a size, not for a range', () => {
    checkHover('seal { compression: 26$0 mm +3/-2 mm }', 'The nominal size')
    checkHover('seal { compression: 26 mm +3$0/-2 mm }', 'How far it may be above and below')
  })

  it('shows the job in its own units', () => {
    checkHover('job "A" { vessel: "A"  show-in: inch }\nshaft { len$0gth: 50.8 mm }', '2 in (50.8 mm)')
  })

  it('shows what an arithmetic comes to', () => {
    checkHover('shaft { len$0gth: 2 * 1.2 m }', 'Here: 2.4 m')
  })
})

describe('hover on a name', () => {
  it('shows the block it stands for', () => {
    checkHover(
      `battery house { nominal: 96 V }
drive d {
  controller { input: 72..120 V }
  cable feed { from: ho$0use  to: controller }
}`,
      '**battery** `house`',
      'nominal: 96 V',
    )
  })

  it('shows a part of a library, and what is inherited from it', () => {
    const library = `#- parts/shafts.wright
shaft stock { diameter: 35 mm }
#- boat.wright
use "parts/shafts.wright"
`
    checkHover(
      `${library}drive d { shaft { like: st$0ock } }`,
      '**shaft** `stock`',
      'diameter: 35 mm (1.378 in)',
    )
    checkHover(`${library}drive d { shaft line$0 { like: stock } }`, 'diameter: 35 mm (1.378 in) (inherited)')
  })

  it('says what the check is that a concession accepts', () => {
    const { title, why } = allChecks.find(({ id }) => id === 'seal/compression-outside') ?? {}
    checkHover('concession seal/compr$0ession-outside { on: d }', `${title}. ${why}`, 'Source (', 'on: `d`')
  })

  it('shows the fact that an arithmetic takes from elsewhere', () => {
    checkHover(
      'drive d {\n  shaft { diameter: 35 mm }\n  propeller { diameter: 12 * shaft.dia$0meter }\n}',
      '**d.shaft: diameter**',
    )
  })

  it('says nothing between things, in comments and at unknown words', () => {
    expect(hoverAt('shaft { # com$0ment\n}')).toBeUndefined()
    expect(hoverAt('$0\n\nshaft { }')).toBeUndefined()
    expect(hoverAt('widg$0et { }')).toBeUndefined()
    expect(hoverAt('shaft { colo$0ur: 3 }')).toBeUndefined()
  })
})

/** Loose at the top: common practice, no source, says the far feet go up. */
const install = (cursor: {
  reading?: string
  bed?: string
  reading2?: string
  coupling?: string
}) => `drive d {
  ${cursor.coupling ?? 'coupling { flange-diameter: 100 mm }'}
  ${cursor.bed ?? 'bed'} {
    adjuster: stud-and-nuts
    thread: M16
    foot aft { from-coupling: 200 mm  across: 0 mm }
    foot port { from-coupling: 600 mm  across: 140 mm port }
    foot stbd { from-coupling: 600 mm  across: 140 mm starboard }
  }
  ${cursor.reading ?? 'reading one'} {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.20 mm, starboard 1.10 mm, bottom 1.00 mm, port 1.10 mm
    offsets: top 0 mm, starboard 0 mm, bottom 0 mm, port 0 mm
  }
  reading early { taken: 2026-03-01  gauge: 0.02 mm  gaps: top 1 mm, starboard 1 mm, bottom 1 mm, port 1 mm }
}
`

describe('hover on a reading', () => {
  // Slope 0.20 mm on 100 mm = 2 mrad; foot at 600 mm: 1.2 mm up (similar triangles).
  const said = [
    /\*\*Reading one: outside/,
    /port.*up 1\.20 ± \d\.\d\d mm/,
    /aft.*up 0\.40 ±/,
    /turn/,
  ] as const

  it.each(['read$0ing one', 'reading o$0ne'])('says how far each foot goes: %s', (reading) => {
    checkHover(install({ reading }), ...said)
  })

  it('says it at the bed for the latest reading, by its date', () => {
    checkHover(install({ bed: 'b$0ed' }), ...said, 'What the machine stands on')
  })

  it('says why there is no correction', () => {
    checkHover(
      install({ reading: 'read$0ing one', coupling: '' }),
      '**Reading one: no correction**',
      'no coupling block',
    )
    checkHover(install({ reading: 'read$0ing', coupling: '' }), '**Reading: no correction**')
  })
})

describe('hover on a cable', () => {
  // Current: 15 kW / (√3 · 58 V · 0.9 · 0.92) = 180.3 A (IEC 60034-1 rated output is at the shaft).
  const install = (cable: string) => `drive d {
  motor main { power: 15 kW  voltage: 58 V  power-factor: 0.9  efficiency: 92 % }
  controller { input: 72..120 V }
  ${cable} { from: controller  to: main  conductor: 70 mm2  length: 1.8 m  insulation: 105 degC }
}`

  it.each(['cab$0le phases', 'cable pha$0ses'])('says what it has to carry and what it can: %s', (cable) => {
    checkHover(install(cable), 'Three-phase cable', '181 A', /Can carry.*\d A/, /Voltage lost.*V/, 'Source:')
  })
})

describe('hover on a part of a move', () => {
  it.each([
    ['up 1 tu$0rn 2 flats', 'turn'],
    ['up 0$0.3 mm', 'How far, with its unit'],
    ['up $01 turn', 'How far the nut was turned'],
    ['po$0rt 0.2 mm', 'The side the foot went to'],
    ['up 1 turn, port 0.$02 mm', 'How far, with its unit'],
    ['no$0ne', 'left as it was'],
  ])('says what that part is: %s', (line, words) => {
    checkHover(`drive d {\n  move after a {\n    fwd: ${line}\n  }\n}\n`, words)
  })
})

describe('hover anywhere', () => {
  const text = readFileSync(resolve(examples, 'survey-launch-as-found.wright'), 'utf8')

  it('answers at every place of a demo, within the text', () => {
    const analysis = new Analysis()
    analysis.begin()
    const file = linkFile('demo.wright', openDocument(text), () => undefined)
    let answers = 0
    for (const section of file.document.sections)
      for (let offset = 0; offset <= section.text.length; offset += 1) {
        const found = hover({ analysis, file }, section, offset)
        if (!found) continue
        answers += 1
        expect(found.place.span.start).toBeLessThanOrEqual(offset)
        expect(found.place.span.end).toBeGreaterThanOrEqual(offset)
      }
    expect(answers).toBeGreaterThan(1000)
  })

  it('never throws on a prefix of a demo', () => {
    fc.assert(
      fc.property(fc.nat(text.length), (length) => {
        hoverAt(`${text.slice(0, length)}$0`)
      }),
      { numRuns: 60 },
    )
  })
})
