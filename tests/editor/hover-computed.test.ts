import { describe, expect, it } from 'vitest'
import { hover } from '../../server/src/editor/hover/hover.ts'
import { Analysis } from '../../server/src/job/analysis.ts'
import { openDocument } from '../../server/src/job/document.ts'
import { linkFile } from '../../server/src/job/files.ts'
import { checkHover, hoverAt } from './fixture.ts'

/** The hover with the place of the check pages known. */
function documented(marked: string): string {
  const analysis = new Analysis()
  analysis.begin()
  const file = linkFile('boat.wright', openDocument(marked.replace('$0', '')), () => undefined)
  const [section] = file.document.sections
  const docs = 'https://docs.example/pages/checks/'
  return (section && hover({ analysis, file, docs }, section, marked.indexOf('$0'))?.markdown) ?? ''
}

describe('hover on a seal', () => {
  const seal = (fitted: number) =>
    `sea$0l { compression: 26 mm +3/-2 mm [maker]  free-length: 148 mm  fitted-length: ${fitted} mm }`

  // Compression is free length less fitted length: 148 - 121 = 27 mm, inside 24 to 29 mm (definition).
  it.each([
    [121, 'Bellows compressed 27 mm, specified 24 mm to 29 mm: within', '148 mm'],
    [130, 'Bellows compressed 18 mm, specified 24 mm to 29 mm: outside', '148 mm'],
    [150, 'Bellows stretched 2 mm, specified 24 mm to 29 mm: outside', '148 mm'],
  ])('says how far it is squeezed at %d mm', (fitted, ...says) => {
    checkHover(seal(fitted), ...says, 'Formula: compression = free length - fitted length')
  })

  it('says no result where a length is not known', () => {
    expect(hoverAt('sea$0l { free-length: 148 mm }')?.markdown).not.toContain('Bellows compressed')
  })
})

describe('hover on a protection', () => {
  // 16.304 kW / (0.96 · 84 V) = 202.2 A; 1.25 times that is 253 A (NEC practice); 95 mm2 at 105 °C carries 390 A (ISO 13297
  // Table A.1, from memory), 0.85 in a machinery space (33 CFR 183.425 Table 5): 331.5 A.
  const drive = (rating: number) => `battery house { nominal: 96 V  window: 84..108 V }
drive main {
  motor main { power: 15 kW  efficiency: 92 %  voltage: 58 V  power-factor: 0.9 }
  controller { efficiency: 96 % }
  cable feed { from: house  to: controller  conductor: 95 mm2  length: 2.5 m  insulation: 105 degC }
  protec$0tion fuse { rating: ${rating} A  in: feed }
}`
  it.each([
    [315, '315 A for feed: between load and cable'],
    [200, '200 A for feed: too small for the load'],
    [630, '630 A for feed: too large for the cable'],
  ])('holds %d A against load and cable', (rating, words) => {
    checkHover(
      drive(rating),
      words,
      '| 254 A to 400 A (1.25 times the load; what the cable allows)',
      '1.25 × 202.9 A (15 kW at the shaft of the motor, 84 V at the low end of the battery); the cable can carry 331 A',
      '33 CFR 183.455(c)(2)',
    )
  })

  it('holds it against the cable alone where the load is not known', () => {
    checkHover(
      drive(315).replace('power: 15 kW', ''),
      '**Protection fuse**',
      'at most 400 A (what the cable allows)',
    )
  })

  it('names the parts of a drive with their results', () => {
    const text = drive(630).replace('$0', '').replace('drive main', 'dri$0ve main')
    checkHover(
      text,
      '**Drive main**',
      '| cable `feed` | 203 A, can carry 331 A |',
      '| protection `fuse` | 630 A for `feed`: too large for the cable |',
      '| motor `main` | 15 kW (20.12 hp)',
    )
  })
})

/** Slope of 0.20 mm on 100 mm = 2 mrad, far end low. */
const machine = (at: {
  coupling?: string
  move?: string
  after?: string
  drive?: string
  thread?: string
}) => `${at.drive ?? 'drive d'} {
  ${at.coupling ?? 'coupling'} { flange-diameter: 100 mm  gap-variation: max 0.10 mm [maker] }
  bed {
    adjuster: stud-and-nuts
    thread: ${at.thread ?? 'M16'}
    foot aft { from-coupling: 200 mm  across: 0 mm }
    foot fwd { from-coupling: 600 mm  across: 0 mm }
  }
  reading one {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.20 mm, starboard 1.10 mm, bottom 1.00 mm, port 1.10 mm
  }
  ${at.move ?? 'move'} ${at.after ?? 'after'} one { done: 2026-03-04  fwd: up 2 flats, port 0.4 mm }
}
`

describe('hover on a move', () => {
  it('that is planned says so', () => {
    checkHover(machine({ move: 'mo$0ve' }).replace('done: 2026-03-04  ', ''), '**Planned move after one**')
  })

  it('says height and turns of each foot, and what it does to the slope', () => {
    // M16 has 2 mm pitch (ISO 262), so two flats are 0.667 mm; on 400 mm between the feet that is 1.667 mrad, and 0.4 mm is 1 mrad
    // (similar triangles). The gap variation to be expected is 100 mm · hypot(2 - 1.667, 1) mrad = 0.105 mm.
    checkHover(
      machine({ move: 'mo$0ve' }),
      '**Move after one**',
      '| `fwd` | up 0.67 mm | 2 flats | to port 0.40 mm |',
      'Slope, going forward: 2.00 mrad down → 0.33 mrad down',
      'Sideways, going forward: 0.00 mrad to starboard → 1.00 mrad to port',
      'Expected gap variation: 0.11 mm',
    )
  })

  it('says what is not known where the thread is not', () => {
    checkHover(machine({ move: 'mo$0ve', thread: 'M17' }), '| `fwd` | not known (unknown thread) |')
    expect(hoverAt(machine({ move: 'mo$0ve', thread: 'M17' }))?.markdown).not.toContain('Slope, going')
  })

  it('says what `after` means', () => {
    checkHover(machine({ after: 'af$0ter' }), '**after**', 'before the feet were moved')
  })
})

describe('hover on a coupling', () => {
  it('holds the last reading against what is allowed', () => {
    checkHover(
      machine({ coupling: 'coup$0ling' }),
      '**reading `one`: outside: 0.20, limit 0.10 mm**',
      '| gap variation | 0.20 mm | 0.10 mm | the maker |',
      'ISO 14253-1',
    )
    checkHover(machine({ drive: 'dri$0ve d' }), '| reading `one` | **outside: 0.20, limit 0.10 mm** |')
  })
})

describe('hover inside a value', () => {
  it('says what each part of it is', () => {
    checkHover('battery b { window: 8$04..108 V }', 'The lower limit.')
    checkHover('battery b { window: 84..10$08 V }', 'The upper limit.')
    checkHover('seal { compression: 26 mm +$03/-2 mm }', 'how far it may be above and below the size')
    checkHover('shaft { diameter: 35 mm ± 0.0$02 mm }', 'above or below the size')
    checkHover('shaft { diameter: 35 mm h$09 }', 'ISO 286')
    checkHover('coupling { offset: ma$0x 0.1 mm }', '`max`: No more than what follows.')
    checkHover('coupling { bolts: 4 x M$010 }', 'Their thread')
    checkHover('phase-map { A t$0o U }', 'The word `to`')
    checkHover('bed { shims: 0.2$054 mm, 0.1 mm }', '0.01 in')
  })

  it('gives an end of a range the unit that stands once: 1 in = 25.4 mm exactly (NIST SP 811, B.8)', () => {
    checkHover('seal { compression: $025.4..50.8 mm }', '`25.4 mm` is 1 in')
  })

  it.each([
    ['sta$0rboard', 90],
    ['bott$0om', 180],
    ['po$0rt', 270],
  ])('gives a place round the shaft in degrees, clockwise looking forward: %s', (place, degrees) => {
    checkHover(`reading r { gaps: top 1 mm, ${place} 1.2 mm }`, `is ${degrees} degrees clockwise from top`)
  })

  it('says what a word of provenance means', () => {
    checkHover('seal { free-length: 148 mm [meas$0ured] }', '`measured`: Measured.')
  })
})

describe('hover and the documentation', () => {
  const page = (id: string) => `[${id}](https://docs.example/pages/checks/${id}.md)`

  it('leads from a fact to the checks it takes part in', () => {
    expect(documented('seal { fitted-$0length: 121 mm }')).toContain(page('seal/compression-outside'))
    checkHover('seal { fitted-$0length: 121 mm }', 'Checked by `seal/compression-outside`')
  })

  it('leads from a result to how it is worked out', () => {
    const markdown = documented('sea$0l { free-length: 148 mm  fitted-length: 121 mm }')
    expect(markdown).toContain('(https://docs.example/pages/engineering.md)')
    expect(markdown).toContain(page('seal/compression-outside'))
  })

  it('leads from what the faces of the coupling come to to the page of alignment', () => {
    const markdown = documented('drive d { coup$0ling { flange-diameter: 100 mm } }')
    expect(markdown).toContain('(https://docs.example/pages/engineering/alignment.md)')
  })

  it('leads from a concession to the page of its check', () => {
    expect(documented('concession seal/compr$0ession-outside { on: d }')).toContain(
      page('seal/compression-outside'),
    )
  })
})
