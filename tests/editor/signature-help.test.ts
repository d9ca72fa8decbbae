import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { signatureHelp } from '../../server/src/editor/completion/signature-help.ts'
import { locate, openDocument } from '../../server/src/job/document.ts'
import { blockKinds, vocabulary } from '../../server/src/vocabulary/index.ts'
import { openFixture } from './fixture.ts'

function helpAt(marked: string) {
  const { open, position } = openFixture(marked)
  const at = locate(open.document, position)
  return at && signatureHelp(at.section, at.offset)
}

/** The form at the cursor, its active part in angle brackets. */
function shown(marked: string): string | undefined {
  const help = helpAt(marked)
  const form = help?.forms[help.form]
  const part = form?.parts[help?.part ?? 0]
  return (
    form &&
    part &&
    `${form.label.slice(0, part.start)}<${form.label.slice(part.start, part.end)}>${form.label.slice(part.end)}`
  )
}

describe('how a value is written', () => {
  it.each([
    ['reading r { gaps: $0 }', 'gaps: <place> length, …'],
    ['reading r { gaps: to$0 }', 'gaps: <place> length, …'],
    ['reading r { gaps: top $0 }', 'gaps: place <length>, …'],
    ['reading r { gaps: top 1.9$0 }', 'gaps: place <length>, …'],
    ['reading r { gaps: top 1.9 m$0 }', 'gaps: place <length>, …'],
    ['reading r { gaps: top 1.92 mm, $0 }', 'gaps: <place> length, …'],
    ['reading r { gaps: 45 deg $0 }', 'gaps: place <length>, …'],
    ['coupling { bolts: $0 }', 'bolts: <number x> thread class mark, torque'],
    ['coupling { bolts: 4 x $0 }', 'bolts: number x <thread> class mark, torque'],
    ['coupling { bolts: 4 x M10 class $0 }', 'bolts: number x thread class <mark>, torque'],
    ['coupling { bolts: 4 x M10, $0 }', 'bolts: number x thread class mark, <torque>'],
    ['drive d { phase-map { $0 } }', '<terminal> to terminal, …'],
    ['drive d { phase-map { A to U, B to $0 } }', 'terminal to <terminal>, …'],
    ['drive d { move after a { fwd: $0 } }', 'fwd: <up/down> turns flats, port/starboard distance'],
    ['drive d { move after a { fwd: up $0 } }', 'fwd: up/down <turns> flats, port/starboard distance'],
    ['drive d { move after a { fwd: up 1 turn $0 } }', 'fwd: up/down turns <flats>, port/starboard distance'],
    [
      'drive d { move after a { fwd: up 1 turn 2 flats, $0 } }',
      'fwd: up/down turns flats, <port/starboard> distance',
    ],
    [
      'drive d { move after a { fwd: up 0.3 mm, port $0 } }',
      'fwd: up/down height, port/starboard <distance>',
    ],
    ['drive d { move after a { fwd: p$0 } }', 'fwd: <port/starboard> distance, up/down turns flats'],
    [
      'drive d { move after a { fwd: port 0.2 mm, up 0.3 m$0 } }',
      'fwd: port/starboard distance, up/down <height>',
    ],
    ['drive d { move after a { fwd: n$0 } }', 'fwd: <none>'],
    ['shaft-log { clearance: top 1 mm, port $0', 'clearance: place <length>, …'],
    ['foot a { across: 140 mm $0', 'across: length <port/starboard>'],
    ['shaft { diameter: 35 mm $0 }', 'diameter: size <class>'],
    ['shaft { diameter: 35 mm ± $0 }', 'diameter: size <± by>'],
    ['seal { compression: $0 }', 'compression: <least..most>'],
    ['seal { compression: max $0 }', 'compression: max <limit>'],
    ['seal { compression: mi$0 }', 'compression: <min> limit'],
    ['seal { compression: 26 mm $0 }', 'compression: size <+up/-down>'],
  ])('%s', (marked, wanted) => {
    expect(shown(marked)).toBe(wanted)
  })

  it('is said with what the fact is and an example', () => {
    const help = helpAt('coupling { bolts: $0 }')
    expect(help?.forms[0]?.doc).toContain(vocabulary.coupling.facts.bolts.doc)
    expect(help?.forms[0]?.doc).toContain(vocabulary.coupling.facts.bolts.example)
  })

  it.each([
    'shaft { length: $0 }',
    'shaft { colour: $0 }',
    'job "A" { vessel: $0 }',
    'reading r { taken: $0 }',
    'reading r { gaps: top 1.92 mm $0 }',
    'foot a { across: 140 mm port $0 }',
    'reading r { gaps: top 1 mm # $0',
    'shaft { diameter: 35 mm [$0',
    '$0',
    'drive d { move after a { fwd: up 0.3 mm $0 } }',
    'drive d { move after a { fwd: none $0 } }',
  ])('is not said where there are no parts, or no more of them: %s', (marked) => {
    expect(helpAt(marked)).toBeUndefined()
  })

  it('is there for every value of several parts that the vocabulary shows', () => {
    const formed = blockKinds.flatMap(({ kind, facts }) =>
      Object.entries(facts)
        .filter(([, { shape }]) => shape.forms?.some(({ entries }) => entries.flat().length > 1))
        .map(([name, { example }]) => ({ kind, name, example })),
    )
    expect(formed.length).toBeGreaterThan(8)
    // The example is of one of the forms: its last word is a part of it.
    for (const { kind, name, example } of formed)
      expect(helpAt(`${kind} {\n  ${name}: ${example}$0\n}`), `${kind}.${name}`).toBeDefined()
  })

  it('answers within its labels at every place of a demo', () => {
    const text = readFileSync(
      resolve(import.meta.dirname, '../../docs/examples/survey-launch-as-found.wright'),
      'utf8',
    )
    let answers = 0
    for (const section of openDocument(text).sections)
      for (let offset = 0; offset <= section.text.length; offset += 1) {
        const help = signatureHelp(section, offset)
        if (!help) continue
        answers += 1
        const form = help.forms[help.form]
        const part = form?.parts[help.part]
        expect(part?.end).toBeLessThanOrEqual(form?.label.length ?? 0)
      }
    expect(answers).toBeGreaterThan(100)
  })
})
