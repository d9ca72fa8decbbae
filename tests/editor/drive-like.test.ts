// What an editor shows of a drive that takes from another: the language's own rules (design decisions, no outside source).
import { describe, expect, it } from 'vitest'
import { completion } from '../../server/src/editor/completion/completion.ts'
import { codeLenses } from '../../server/src/editor/hints/code-lens.ts'
import { inlayHints } from '../../server/src/editor/hints/inlay-hints.ts'
import { filesAround } from '../../server/src/editor/navigation/around.ts'
import { definition } from '../../server/src/editor/navigation/definition.ts'
import { references } from '../../server/src/editor/navigation/references.ts'
import { symbolsOf } from '../../server/src/editor/outline/symbols.ts'
import { rename } from '../../server/src/editor/rename/rename.ts'
import { rangeOf } from '../../server/src/job/document.ts'
import type { Place } from '../../server/src/job/model.ts'
import { checkHover } from './fixture.ts'
import { openMarked, said } from './marked.ts'

const written = ({ section, span }: Place) => section.text.slice(span.start, span.end)

function definedAt(marked: string): string[] {
  const { workspace, open, view, at } = openMarked(marked)
  const place = definition(view, at.section, at.offset)
  const found = place && workspace.locate(open, place)
  return place && found ? [said(found.uri, found.range, written(place))] : []
}

const port = (inside = '') => `drive port {
  shaft { diameter: 40 mm  length: 3.10 m }
  motor propulsion { power: 20 kW  voltage: 90 V }
  controller { input: 120..170 V }
  cable phases { from: controller  to: propulsion  conductor: 2 mm2  length: 1.6 m  insulation: 105 degC }
  ${inside}
}
`

describe('the definition', () => {
  const cases: readonly (readonly [string, string])[] = [
    ['of the drive it is like', 'drive «port» { }\ndrive starboard { like: po$0rt }'],
    [
      'of a block that adds to one of the other drive',
      'drive port { motor «main» { } }\ndrive starboard {\n  like: port\n  motor ma$0in { }\n}',
    ],
    [
      'of a block by its kind',
      'drive port { «shaft» { } }\ndrive starboard {\n  like: port\n  sha$0ft { }\n}',
    ],
    [
      'of a fact that is said anew',
      'drive port { shaft { «length»: 3 m } }\ndrive starboard {\n  like: port\n  shaft { len$0gth: 4 m }\n}',
    ],
    [
      'of a fact that is taken',
      'drive port { shaft { «diameter»: 40 mm } }\ndrive starboard {\n  like: port\n  seal { shaft-size: shaft.dia$0meter }\n}',
    ],
    [
      'of a block that is taken',
      'drive port { motor «main» { } }\ndrive starboard {\n  like: port\n  cable c { to: ma$0in }\n}',
    ],
    [
      'of a block of its own',
      'drive port { motor main { } }\ndrive starboard {\n  like: port\n  motor «main» { }\n  cable c { to: ma$0in }\n}',
    ],
    [
      'through a chain of drives',
      'drive a { shaft { «length»: 3 m } }\ndrive b { like: a }\ndrive c {\n  like: b\n  seal { free-length: shaft.le$0ngth }\n}',
    ],
  ]
  it.each(cases)('%s', (_, marked) => expect(definedAt(marked)).toEqual(openMarked(marked).expected))
})

describe('the hover', () => {
  const second = (inside: string) => `${port()}drive starboard {\n  like: port\n${inside}}\n`

  it('on the name of a block says which drive each fact is from', () =>
    checkHover(
      second('  motor pro$0pulsion { power: 15 kW }\n'),
      'power: 15 kW',
      'voltage: 90 V (from `port.propulsion`)',
    ))

  it('on a fact says what it stands instead of', () =>
    checkHover(second('  shaft { len$0gth: 3.25 m }\n'), 'Here: 3.25 m', 'Replaces 3.1 m', 'of `port.shaft`'))

  it('on a name that is taken says where from', () =>
    checkHover(second('  seal { shaft-size: shaft.dia$0meter }\n'), 'Here: 40 mm', 'Taken from `port.shaft`'))

  it('on like says what is taken and what never is', () =>
    checkHover(`${port()}drive starboard { li$0ke: port }\n`, 'block by block', 'Not inherited', 'phase map'))
})

describe('names', () => {
  it('are renamed in both drives together', async () => {
    const marked = `${port()}drive starboard {\n  like: port\n  motor «propul$0sion» { }\n}\n`
    const { workspace, view, at } = openMarked(marked)
    const around = await filesAround(workspace)
    const found = (await Array.fromAsync(references(view, at, around))).map(
      ({ at: place, in: { uri, file } }) => said(uri, rangeOf(file.document, place), written(place)),
    )
    expect(found).toEqual([
      'boat.wright 2:8 propulsion',
      'boat.wright 4:39 propulsion',
      'boat.wright 9:8 propulsion',
    ])
    const edits = await rename(view, at, { to: 'main', around })
    expect('refused' in edits ? edits.refused : edits.length).toBe(3)
  })
})

describe('what is taken', () => {
  const { view, workspace, open } = openMarked(`${port()}drive starboard { like: port }\n$0`)
  const [first, second] = open.document.sections

  it('has no hints in the text of the drive that takes it', () => {
    expect(first && inlayHints(view, first).length).toBeGreaterThan(0)
    expect(second && inlayHints(view, second)).toEqual([])
  })

  it('is not in the outline', () => {
    expect(second && symbolsOf(second).map(({ name, children }) => [name, children.length])).toEqual([
      ['starboard', 0],
    ])
  })

  it('has no line over its drive: what is wrong with it is a finding, and no reading is taken', () => {
    expect(workspace).toBeDefined()
    expect(second && codeLenses(view, second)).toEqual([])
  })
})

describe('completion', () => {
  function offers(marked: string) {
    const { workspace, view, at } = openMarked(marked)
    const asking = { ...view, today: '2026-06-01', findings: () => [], paths: () => [] }
    expect(workspace).toBeDefined()
    return completion(asking, at.section, at.offset)?.offers ?? []
  }

  it('offers like in a drive, and the other drives behind it', () => {
    expect(offers(`${port()}drive starboard {\n  $0\n}\n`).map(({ label }) => label)).toContain('like')
    expect(offers(`${port()}drive starboard {\n  like: $0\n}\n`).map(({ label }) => label)).toEqual(['port'])
  })

  it('ranks the facts that a block takes last', () => {
    const found = offers(`${port()}drive starboard {\n  like: port\n  motor propulsion {\n    $0\n  }\n}\n`)
    const details = Object.fromEntries(found.map(({ label, detail }) => [label, detail]))
    expect(details).toMatchObject({ power: 'inherited', voltage: 'inherited' })
    expect(details['speed']).not.toBe('inherited')
  })
})
