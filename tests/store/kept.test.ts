// What is kept of a job may never show: after any edits, here or in the library that it uses, all is as if read for the first time.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Document, edit, openDocument, textOf } from '../../server/src/job/document.ts'
import { demo, Session } from './jobs.ts'

const twin = demo('twin-screw-ferry.wright')
const parts = demo('parts/drivetrain.wright')

type Edit = (
  text: string,
  at: number,
) => { readonly from: number; readonly to: number; readonly text: string }

const lineAt = (text: string, at: number): { readonly from: number; readonly to: number } => {
  const from = text.lastIndexOf('\n', at - 1) + 1
  const end = text.indexOf('\n', at)
  return { from, to: end < 0 ? text.length : end + 1 }
}

/** What people do to a job: to a figure, a line, a name, a comment, a brace. */
const edits: Readonly<Record<string, Edit>> = {
  figure: (text, at) => {
    const found = /\d+/g
    found.lastIndex = at
    const match = found.exec(text)
    return match
      ? {
          from: match.index,
          to: match.index + match[0].length,
          text: String((Number(match[0]) * 7 + 3) % 400),
        }
      : { from: at, to: at, text: '' }
  },
  blank: (_, at) => ({ from: at, to: at, text: ' ' }),
  comment: (text, at) => ({ from: lineAt(text, at).from, to: lineAt(text, at).from, text: '# a comment\n' }),
  delete: (text, at) => ({ ...lineAt(text, at), text: '' }),
  twice: (text, at) => {
    const { from, to } = lineAt(text, at)
    return { from: to, to, text: text.slice(from, to) }
  },
  unknown: (text, at) => {
    const { from, to } = lineAt(text, at)
    return { from, to, text: text.slice(from, to).replace(/:.*/, ': ?') }
  },
  name: (text, at) => {
    const found = /\b(port|starboard|house|feed|main|ferry|standard)\b/g
    found.lastIndex = at
    const match = found.exec(text)
    return match
      ? { from: match.index, to: match.index + match[0].length, text: 'other' }
      : { from: at, to: at, text: '' }
  },
  another: (text, at) => {
    const between = text.indexOf('\n\n', at)
    const name = ['house', 'other', 'port', 'standard'][Math.floor(at) % 4] ?? ''
    const block = at % 3 === 0 ? `drive ${name} { battery: house }` : `battery ${name} { nominal: 24 V }`
    return { from: between + 1, to: between + 1, text: `${block}\n` }
  },
  brace: (text, at) => {
    const index = text.indexOf('}', at)
    return { from: Math.max(index, 0), to: index < 0 ? 0 : index + 1, text: '' }
  },
}

const anyEdit = fc.record({
  what: fc.constantFrom(...Object.keys(edits)),
  at: fc.double({ min: 0, max: 1, noNaN: true }),
  inLibrary: fc.boolean(),
  /** Taken back with the next one: an answer that was there before comes again. */
  isTakenBack: fc.boolean(),
})

describe('what is kept of a job', () => {
  it('is what a first reading gives, after edits here and in the library', () => {
    fc.assert(
      fc.property(fc.array(anyEdit, { minLength: 1, maxLength: 8 }), (all) => {
        const session = new Session()
        let documents: readonly [Document, Document] = [openDocument(twin), openDocument(parts)]
        session.seen(...documents)
        for (const { what, at, inLibrary, isTakenBack } of all) {
          const before = documents
          const which = inLibrary ? 1 : 0
          const text = textOf(documents[which])
          const made = edits[what]?.(text, Math.floor(at * text.length))
          if (!made) throw new Error(`no edit ${what}`)
          const changed = edit(documents[which], made.from, made.to, made.text)
          documents = inLibrary ? [documents[0], changed] : [changed, documents[1]]
          const [own, library] = [textOf(documents[0]), textOf(documents[1])]
          expect(session.seen(...documents)).toEqual(new Session().seen(own, library))
          if (isTakenBack) documents = before
        }
      }),
      { numRuns: 25 },
    )
  })

  it('follows a battery that only the list of all batteries leads to', () => {
    const job = (window: string) => `job "J" { vessel: "V"  revision: "A"  status: draft }
battery house { nominal: 48 V  window: ${window} }
drive d1 { motor m { power: 5 kW  voltage: 65 V } }
`
    const session = new Session()
    const before = openDocument(job('40..56 V'))
    session.seen(before)
    const at = textOf(before).indexOf('40..56 V')
    const after = edit(before, at, at + 8, '84..108 V')
    expect(session.seen(after)).toEqual(new Session().seen(job('84..108 V')))
  })

  it('leads from a drive to where its battery is written now', () => {
    const job = (nominal: string) => `battery house { ${nominal} }
drive d1 { battery: house  motor m { power: 5 kW  voltage: house.nominal } }
`
    const session = new Session()
    const before = openDocument(job('nominal: 48 V'))
    session.seen(before)
    const after = edit(before, 'battery house { '.length, 'battery house { '.length, '  ')
    const { references } = session.seen(after)
    expect(references).toEqual(new Session().seen(job('  nominal: 48 V')).references)
    expect(
      references.flat().map(({ fact, named }) => [fact, 'start' in named && named.start.character]),
    ).toEqual([
      [undefined, 8],
      [undefined, 8],
      ['nominal', 18],
    ])
  })
})
