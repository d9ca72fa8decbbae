// Editing keeps what an edit does not touch. It may never show: the result is that of opening the text afresh.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../server/src/areas/index.ts'
import { Checker } from '../../server/src/checks/run.ts'
import { Analysis } from '../../server/src/job/analysis.ts'
import {
  type Document,
  edit,
  locate,
  offsetAt,
  openDocument,
  positionOf,
  rangeOf,
  textOf,
} from '../../server/src/job/document.ts'
import { linkFile } from '../../server/src/job/files.ts'
import { referencesOf } from '../../server/src/job/references.ts'
import { jobs, soup, texts } from '../syntax/texts.ts'

const parts = openDocument('motor stock { power: 15 kW }\n')
const today = '2026-03-10'

/** An editor's session: one analysis and one checker for every state of the text. */
function session() {
  const analysis = new Analysis()
  const checker = new Checker(analysis, allChecks)
  return (document: Document) => {
    analysis.begin()
    const file = linkFile('a.wright', document, (path) => (path === 'parts.wright' ? parts : undefined))
    const references = document.sections.flatMap((section) =>
      referencesOf({ analysis, file }, section).map(({ at, to, fact, named }) => {
        const here = document.sections.includes(named.section)
        const name = named.section.text.slice(named.span.start, named.span.end)
        return [rangeOf(document, at), to.path, fact, here ? rangeOf(document, named) : name]
      }),
    )
    const findings = checker.check(file, { today }).map((finding) => ({
      check: finding.check,
      severity: finding.severity,
      message: finding.message,
      range: rangeOf(document, finding.at),
      related: finding.related?.map(({ at, message }) => [rangeOf(document, at), message]),
    }))
    return { findings, references }
  }
}

const edits = fc.array(
  fc.record({
    from: fc.double({ min: 0, max: 1, noNaN: true }),
    length: fc.oneof(fc.constant(0), fc.nat(4), fc.nat(80)),
    text: fc.oneof(
      fc.constantFrom(
        '',
        '{',
        '}',
        '\n',
        '"',
        '#',
        'seal {\n',
        '}\n',
        '  ',
        '\r',
        ' 2',
        'main',
        'spare',
        'like: spare\n',
        'like: main\n',
      ),
      soup(6),
      jobs,
    ),
  }),
  { maxLength: 6 },
)

/** What is named and looked up afterwards: readings, feet, terminals, what a concession is about. */
const logs = fc.constantFrom(
  'drive main {\n  bed {\n    foot aft { across: 1 mm port }\n  }\n  reading dry-1 { gauge: 0.02 mm }\n  move after dry-1 { aft: up 1 mm }\n}\n',
  'drive main {\n  controller { terminals: A, B }\n  motor { like: stock }\n  phase-map { A to U, B to V }\n}\n',
  'concession seal/compression-outside { on: main.dry-1 }\nmotor stock { terminals: U, V, W }\n',
  'drive main {\n  like: spare\n  motor { power: 1 kW }\n  cable c { to: motor }\n}\ndrive spare {\n  like: main\n}\n',
  'drive spare {\n  shaft { diameter: 40 mm  length: 2 m [measured] }\n  seal { shaft-size: shaft.diameter }\n  bed {\n    foot aft { across: 1 mm port }\n  }\n  phase-map { A to U }\n}\ndrive main {\n  like: spare\n  shaft { diameter: seal.shaft-size }\n}\n',
  'bed {\n  foot aft { across: 1 mm port }\n}\ndrive main {\n  reading dry-1 { }\n  move after main.dry-1 { aft: down 1 mm }\n}\n',
)
const installs = fc.tuple(jobs, logs, jobs, logs).map((pieces) => pieces.join(''))

const applied = (text: string, from: number, to: number, by: string) =>
  text.slice(0, from) + by + text.slice(to)

describe('a run of edits', () => {
  it('gives the sections that opening the text gives', () => {
    fc.assert(
      fc.property(texts, edits, (start, changes) => {
        let text = start
        let document = openDocument(start)
        for (const change of changes) {
          const from = Math.floor(change.from * text.length)
          const to = Math.min(text.length, from + change.length)
          text = applied(text, from, to, change.text)
          document = edit(document, from, to, change.text)
          expect(textOf(document)).toBe(text)
          expect(document.length).toBe(text.length)
          expect(document.sections.map((section) => section.text)).toEqual(
            openDocument(text).sections.map((section) => section.text),
          )
        }
      }),
      { numRuns: 1000 },
    )
  })

  it('gives the findings and references, and their places, that a fresh start gives', () => {
    fc.assert(
      fc.property(fc.oneof(jobs, installs), edits, (start, changes) => {
        let text = start
        let document = openDocument(start)
        const kept = session()
        kept(document)
        for (const change of changes) {
          const from = Math.floor(change.from * text.length)
          const to = Math.min(text.length, from + change.length)
          text = applied(text, from, to, change.text)
          document = edit(document, from, to, change.text)
          expect(kept(document)).toEqual(session()(openDocument(text)))
        }
      }),
      { numRuns: 200 },
    )
  })

  it('keeps every section it does not touch', () => {
    const blocks = Array.from({ length: 9 }, (_, i) => `drive d${i} {\n  gear { ratio: 2.5 }\n}\n`)
    const before = openDocument(blocks.join(''))
    const at = blocks.slice(0, 5).join('').length + 'drive d5 {\n  gear { ratio: '.length
    const after = edit(before, at, at + 3, '3')
    const kept = after.sections.map((section, i) => section === before.sections[i])
    expect(kept).toEqual([true, true, true, true, true, false, true, true, true])
  })
})

describe('a place', () => {
  it('is the same by offset and by line and character', () => {
    fc.assert(
      fc.property(texts, fc.double({ min: 0, max: 1, noNaN: true }), (text, share) => {
        const document = openDocument(text)
        const offset = Math.floor(share * text.length)
        // Between the two signs of a line end there is no place of its own.
        fc.pre(!(text[offset - 1] === '\r' && text[offset] === '\n'))
        const before = text.slice(0, offset).split(/\r\n|\n|\r/)
        const position = { line: before.length - 1, character: before.at(-1)?.length ?? 0 }
        expect(offsetAt(document, position)).toBe(offset)
        const found = locate(document, position)
        expect(found && positionOf(document, found.section, found.offset)).toEqual(position)
      }),
      { numRuns: 500 },
    )
  })

  // LSP 3.17, Position: a character greater than the line length "defaults back to the line length".
  it.each(['a\nb', 'a\r\nb', 'a\rb'])('beyond a line is before its line end: %j', (text) => {
    expect(offsetAt(openDocument(text), { line: 0, character: 9 })).toBe(1)
  })

  it('beyond the text is its end', () => {
    expect(offsetAt(openDocument('a\nb'), { line: 9, character: 9 })).toBe(3)
  })
})
