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

/** Blocks at the top of a file. Some are named like kinds, or like what is inside others. */
const tops = [
  'battery house { nominal: 96 V  window: 84..108 V }\n',
  'drive main {\n  battery: house\n  motor m { power: 15 kW  voltage: 144 V }\n}\n',
  'motor spare { power: 15 kW  voltage: 144 V }\n',
  'drive port {\n  like: main\n  controller {}\n  cable feed { from: house  to: controller  conductor: 25 mm2 }\n}\n',
  'motor other { power: 5 kW  voltage: 144 V }\n',
  'battery battery { window: 40..56 V }\n',
  'battery house {}\n',
  'drive battery {\n  seal {}\n  cable feed { from: battery  to: m }\n  protection f { in: main.feed }\n}\n',
  'motor drive { like: m  voltage: 144 V }\n',
  'job "J" { vessel: "V"  status: as-built  show-in: inch }\n',
  '}\n',
]
const topNames = ['house', 'main', 'battery', 'drive', 'm', 'feed']

type Move = (blocks: string[], at: number, to: number) => unknown

const inBlock =
  (change: (block: string, to: number) => string): Move =>
  (blocks, at, to) =>
    blocks.splice(at, 1, change(blocks[at] ?? '', to))

/** What is done to blocks at the top of a file. */
const moves: Readonly<Record<string, Move>> = {
  put: (blocks, at, to) => blocks.splice(at, 0, tops[to % tops.length] ?? ''),
  out: (blocks, at) => blocks.splice(at, 1),
  twice: (blocks, at) => blocks.splice(at, 0, blocks[at] ?? ''),
  elsewhere: (blocks, at, to) => blocks.splice(to % Math.max(blocks.length, 1), 0, ...blocks.splice(at, 1)),
  name: inBlock((block, to) => block.replace(/^(\w+) \w+/, `$1 ${topNames[to % topNames.length]}`)),
  kind: inBlock((block) => block.replace(/^\w+/, (kind) => (kind === 'batery' ? 'battery' : 'batery'))),
  open: inBlock((block) => block.replace(/\}\n$/, '')),
  /** The block goes on around two behind it. */
  around: (blocks, at, to) => {
    moves['open']?.(blocks, at, to)
    blocks.splice(at + 3, 0, '}\n')
  },
  emptied: inBlock((block) => block.replace(/\{.*\}\n$/s, '{}\n')),
}

const anyMove = fc.record({
  what: fc.constantFrom(...Object.keys(moves), 'put', 'put', 'put', 'around', 'around'),
  at: fc.nat(30),
  to: fc.nat(30),
  inLibrary: fc.boolean(),
  /** Else the next comes before anybody has looked. */
  isLookedAt: fc.boolean(),
  isTakenBack: fc.boolean(),
})

const inJob = { at: 0, to: 0, inLibrary: false, isLookedAt: true, isTakenBack: false }
/** A motor that was inside a drive for a while, and then a battery for it. */
const found = [
  { ...inJob, what: 'twice', isTakenBack: true },
  { ...inJob, what: 'around', at: 1, isTakenBack: true },
  { ...inJob, what: 'put' },
]

type Files = readonly [readonly string[], readonly string[]]

/** The document with another text, edited where that differs. */
function rewritten(document: Document, text: string): Document {
  const before = textOf(document)
  const most = Math.min(before.length, text.length)
  let from = 0
  while (from < most && before[from] === text[from]) from += 1
  let back = 0
  while (back < most - from && before.at(-1 - back) === text.at(-1 - back)) back += 1
  return edit(document, from, before.length - back, text.slice(from, text.length - back))
}

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

  it('is what a first reading gives, after blocks come, go, change places and swallow each other', () => {
    fc.assert(
      fc.property(fc.array(anyMove, { minLength: 3, maxLength: 8 }), (all) => {
        const session = new Session()
        let files: Files = [['use "parts/drivetrain.wright"\n', ...tops.slice(1, 5)], tops.slice(5, 7)]
        let documents: readonly [Document, Document] = [openDocument(''), openDocument('')]
        for (const { what, at, to, inLibrary, isLookedAt, isTakenBack } of all) {
          const before = files
          const which = inLibrary ? 1 : 0
          const blocks = [...files[which]]
          moves[what]?.(blocks, at % Math.max(blocks.length, 1), to)
          files = inLibrary ? [files[0], blocks] : [blocks, files[1]]
          documents = [rewritten(documents[0], files[0].join('')), rewritten(documents[1], files[1].join(''))]
          if (isLookedAt)
            expect(session.seen(...documents)).toEqual(
              new Session().seen(textOf(documents[0]), textOf(documents[1])),
            )
          if (isTakenBack) files = before
        }
      }),
      { numRuns: 100, examples: [[found]] },
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
