import { describe, expect, it } from 'vitest'
import { allChecks } from '../../server/src/areas/index.ts'
import { Checker } from '../../server/src/checks/run.ts'
import { completion } from '../../server/src/editor/completion/completion.ts'
import type { Offer } from '../../server/src/editor/completion/offer.ts'
import { factTemplate } from '../../server/src/editor/completion/snippets.ts'
import { plainOf, snippetOf, type Template } from '../../server/src/editor/completion/template.ts'
import { Analysis } from '../../server/src/job/analysis.ts'
import { locate, openDocument } from '../../server/src/job/document.ts'
import { linkFile } from '../../server/src/job/files.ts'
import { formatText } from '../../server/src/syntax/format.ts'
import { blockKinds } from '../../server/src/vocabulary/index.ts'

const today = '2026-03-09'

function read(text: string) {
  const analysis = new Analysis()
  analysis.begin()
  return { analysis, file: linkFile('boat.wright', openDocument(text), () => undefined) }
}

/** Ids of the checks that find an error. */
function errorsIn(text: string): readonly string[] {
  const { analysis, file } = read(text)
  const findings = new Checker(analysis, allChecks).check(file, { today })
  return [...new Set(findings.filter(({ severity }) => severity === 'error').map(({ check }) => check))]
}

function offersAt(marked: string): readonly Offer[] {
  const { analysis, file } = read(marked.replace('$0', ''))
  const lines = marked.slice(0, marked.indexOf('$0')).split('\n')
  const at = locate(file.document, { line: lines.length - 1, character: lines.at(-1)?.length ?? 0 })
  const found =
    at && completion({ analysis, file, today, paths: () => [], findings: () => [] }, at.section, at.offset)
  return found?.offers ?? []
}

const job = `job "A" { vessel: "A" }
battery house { nominal: 96 V  window: 84..108 V }
`
const bare = `${job}drive main {
  $0
}
`
const full = `${job}drive main {
  propeller { diameter: 420 mm }
  shaft { diameter: 35 mm }
  coupling { flange-diameter: 125 mm }
  motor main { power: 5 kW  speed: 1500 rpm  voltage: 58 V  power-factor: 0.9  efficiency: 92 %  terminals: U, V, W }
  controller { input: 72..120 V  terminals: L1, L2, L3 }
  cable feed { from: house  to: controller  conductor: 70 mm2  length: 1 m  insulation: 105 degC }
  bed {
    adjuster: stud-and-nuts
    thread: M16
    foot aft { from-coupling: 180 mm  across: 140 mm port }
    foot fwd { from-coupling: 560 mm  across: 140 mm starboard }
    foot mid { from-coupling: 560 mm  across: 140 mm port }
  }
  reading dry-1 { taken: 2026-03-04  gauge: 0.02 mm  gaps: top 1 mm, starboard 1 mm, bottom 1 mm, port 1 mm }
  $0
}
`
const end = `${full.replace('$0', '')}$0\n`

/** What would be filled in: a figure, each greater than the one before, where a unit or a sign is beside it, a text, words as one, a name; of a choice what is whole. */
function filled(template: Template, figure = (n: number) => n): string {
  let figures = 0
  const sample = (
    { value, choices }: { value: string; choices?: readonly string[] },
    before: string,
    after: string,
  ) => {
    if (choices) return choices.includes('none') ? 'none' : value
    if (value.endsWith(', in quotes')) return '"x"'
    if (/(?:^|\n) *[a-z-]+(?: after)? "?$/.test(before) || value === today) return value
    const isFigure = /^(?: [^\s\d{}]|\.\.|\/-)/.test(after) || !value.includes(' ')
    return isFigure ? String(figure(++figures)) : value.replaceAll(' ', '-')
  }
  return template
    .map((piece, i) =>
      typeof piece === 'string'
        ? piece
        : sample(piece, plainOf(template.slice(0, i)), plainOf(template.slice(i + 1, i + 2))),
    )
    .join('')
}

const blocks = (marked: string) =>
  offersAt(marked)
    .filter(({ kind }) => kind === 'block' || kind === 'snippet')
    .filter(({ label }) => label !== 'use')
    .map((offer) => ({ label: offer.label, offer, marked }))

/** Of the words, figures and units, not of what they come to. */
const ofForm = /^job\/(?!unresolved|value-outside|fact-missing|refers)/

describe('what is inserted', () => {
  const offered = [...blocks(bare), ...blocks(full), ...blocks(end), ...blocks('$0')]
  const all = offered.filter(({ offer }) => offer.kind === 'block')
  const whole = offered.filter(({ offer }) => offer.kind === 'snippet')

  it.each(whole)('claims nothing until it is filled in: $label', ({ label, offer }) => {
    const text = label === 'whole job' ? '$0\n' : `job "A" { vessel: "A"  status: draft }\n$0\n`
    const inserted = plainOf(offer.insert)
    expect(formatText(`${inserted}\n`)).toBe(`${inserted}\n`)
    const { analysis, file } = read(text.replace('$0', inserted))
    const findings = new Checker(analysis, allChecks).check(file, { today })
    const quiet = findings.filter(({ check }) => !check.startsWith('caution/'))
    expect(quiet.map(({ check, severity }) => `${severity} ${check}`)).toEqual(
      quiet.map(() => 'information job/fact-missing'),
    )
    const places = quiet.map(
      ({ at }) => `${at.section.text.indexOf('{')} ${at.span.start} ${at.section.text}`,
    )
    expect(new Set(places).size).toBe(places.length)
    const said = analysis.blocks(file).flatMap(function all(block): readonly string[] {
      return [
        ...[...block.facts.keys()].map((name) => `${block.path}.${name}`),
        ...block.children.flatMap(all),
      ]
    })
    expect(said.filter((path) => !path.startsWith('job.'))).toEqual([])
  })

  it('a choice in a whole drive begins with a blank', () => {
    const [drive] = whole.filter(({ label }) => label === 'whole drive')
    expect(snippetOf(drive?.offer.insert ?? [])).toMatch(/kind: +\$\{\d+\|\?,flexible,rigid\|\}/)
  })

  it.each(all)('does not pass as it is: $label', ({ offer, marked }) => {
    const before = errorsIn(marked.replace('$0', ''))
    const after = errorsIn(marked.replace('$0', plainOf(offer.insert)))
    expect(after.filter((check) => !before.includes(check))).not.toEqual([])
  })

  it.each(all)('can be read once it is filled in: $label', ({ offer, marked }) => {
    const errors = errorsIn(marked.replace('$0', filled(offer.insert)))
    expect(errors.filter((check) => ofForm.test(check))).toEqual([])
  })

  it.each(all)('is laid out as everything is: $label', ({ offer }) => {
    const text = `${filled(offer.insert)}\n`
    expect(formatText(text)).toBe(text)
  })

  it.each(all)('has no figures: $label', ({ offer }) => {
    const text = offer.insert.map((piece) => (typeof piece === 'string' ? piece : '')).join('')
    expect(text.replaceAll(/mm2|L\d to/g, '')).not.toMatch(/\d/)
  })
})

describe('the value of a fact', () => {
  const site = {
    today,
    system: 'metric',
    taken: [],
    refer: () => [],
    feet: [],
    lastReading: undefined,
    terminals: { controller: [], motor: [] },
  } as const
  const facts = blockKinds.flatMap(({ kind, facts: of }) =>
    Object.entries(of).map(([name, fact]) => ({
      kind,
      name,
      fact,
      template: factTemplate(name, fact, site),
    })),
  )

  it.each(facts)(
    'is none until it is filled in, or is one to choose: $kind.$name',
    ({ kind, name, template }) => {
      const [, first] = template
      if (typeof first === 'object' && (first.choices || first.value === today)) return
      const { analysis, file } = read(`${kind} {\n  ${plainOf(template)}\n}\n`)
      expect(analysis.blocks(file)[0]?.facts.has(name)).toBe(false)
    },
  )

  it.each(facts)('can be read when it is: $kind.$name', ({ kind, name, fact, template }) => {
    if (fact.shape.refersTo) return
    // Of a curve that falls each second figure does.
    const falling = (n: number) => (n % 2 === 0 ? 100 - n : n)
    const figure = fact.shape.words.includes('never rising') ? falling : undefined
    const errors = errorsIn(`${kind} {\n  ${filled(template, figure)}\n}\n`)
    expect(
      errors.filter((check) =>
        /^job\/(line|number|text|unit|value-(empty|not-allowed)|fact-unknown)/.test(check),
      ),
      name,
    ).toEqual([])
  })
})

describe('a snippet', () => {
  const at = (marked: string, label: string) =>
    offersAt(marked).find((offer) => offer.label === label)?.insert ?? []

  it('has its places numbered, choices first, in the syntax of LSP 3.17', () => {
    expect(snippetOf(['a ', { value: 'b' }, ' ', { value: 'x', choices: ['x', 'y'] }])).toBe(
      `a \${1:b} \${2|x,y|}`,
    )
  })

  it('escapes what the syntax gives a meaning', () => {
    expect(snippetOf(['$1 {} \\', { value: '$}' }, { value: 'a', choices: ['a,b', 'c|d'] }])).toBe(
      `\\$1 {} \\\\\${1:\\$\\}}\${2|a\\,b,c\\|d|}`,
    )
  })

  it('gives the next reading its name and today', () => {
    expect(plainOf(at(full, 'reading'))).toMatch(/^reading dry-2 \{\n {2}taken: {3}2026-03-09\n/)
  })

  it('gives the next foot its name, and leaves open on which side it stands', () => {
    const bed = (feet: string) => `drive main {\n  bed {\n    adjuster: shims\n${feet}    $0\n  }\n}\n`
    const aftPort = '    foot aft-port { from-coupling: 180 mm  across: 140 mm port }\n'
    expect(snippetOf(at(bed(''), 'foot'))).toMatch(
      /^foot \$\{1:aft-port\} .* mm \$\{4\|port,starboard\|\} \}$/,
    )
    expect(snippetOf(at(bed(aftPort), 'foot'))).toMatch(
      /^foot \$\{1:aft-stbd\} .* mm \$\{4\|starboard,port\|\} \}$/,
    )
    expect(snippetOf(at(`drive main {\n  bed {\n    foot aft-stbd { $0 }\n  }\n}`, 'across'))).toContain(
      '|port,starboard|',
    )
  })

  it('a job begins as a draft', () => {
    expect(plainOf(at('$0', 'job'))).toContain('status:   draft')
  })

  it('gives a move the last reading and every foot', () => {
    expect(plainOf(at(full, 'move'))).toBe('move after dry-1 {\n  aft: up\n  fwd: up\n  mid: up\n}')
  })

  it('takes the names that are in scope', () => {
    expect(snippetOf(at(full, 'cable'))).toContain(`from:       \${2|controller,main,house|}`)
    expect(plainOf(at(full, 'protection'))).toMatch(/in: +feed/)
  })

  it('gives each terminal of the controller those of the motor to choose from: which goes where is not its to say', () => {
    expect(snippetOf(at(full, 'phase-map'))).toBe(
      `phase-map { L1 to \${1|U,V,W|}, L2 to \${2|U,V,W|}, L3 to \${3|U,V,W|} }`,
    )
  })

  it('has in quotes what has to be', () => {
    const marked = full.replace('terminals: L1, L2, L3', 'terminals: "1U1", A.1')
    expect(plainOf(at(marked, 'phase-map'))).toBe('phase-map { "1U1" to U, "A.1" to U }')
  })

  it('says what is to be put, with the unit behind it', () => {
    expect(snippetOf(at(full, 'reading'))).toContain(
      `gaps:    top \${5:gaps at top} mm, starboard \${6:gaps at starboard} mm`,
    )
    expect(snippetOf(at(bare, 'seal'))).toContain(
      `compression:   \${2:compression} mm +\${3:up}/-\${4:down} mm\n`,
    )
    expect(snippetOf(at(full, 'target'))).toBe(
      `target { shaft-droop: \${1:shaft droop} mm  shaft-slope: \${2:shaft slope} mrad }`,
    )
  })

  it('has the units that the job is shown in', () => {
    expect(plainOf(at(bare.replace('vessel: "A"', 'vessel: "A"  show-in: inch'), 'propeller'))).toContain(
      'diameter: diameter in\n',
    )
    const inches = full.replace('vessel: "A"', 'vessel: "A"  show-in: inch')
    // Conductors are sold by IEC 60228 or by gauge, by square inches nowhere.
    expect(plainOf(at(inches, 'cable'))).toContain('conductor:  conductor mm2\n  length:     length in\n')
  })

  it('ends a concession when it is written: the day is still to be said', () => {
    expect(plainOf(at(end, 'concession'))).toContain('until:      2026-03-09')
  })

  it('has every part of a drive', () => {
    const { file, analysis } = read(plainOf(at('$0', 'whole drive')))
    const kinds = analysis.blocks(file)[0]?.children.map(({ kind }) => kind)
    expect(kinds).toEqual(
      expect.arrayContaining([
        'propeller',
        'shaft',
        'seal',
        'coupling',
        'motor',
        'bed',
        'controller',
        'phase-map',
      ]),
    )
  })
})
