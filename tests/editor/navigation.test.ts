// Where a word is defined and where else it stands: the language's own rules (design decisions, no outside source).
import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { filesAround } from '../../server/src/editor/navigation/around.ts'
import { definition } from '../../server/src/editor/navigation/definition.ts'
import { highlights } from '../../server/src/editor/navigation/highlight.ts'
import { references } from '../../server/src/editor/navigation/references.ts'
import { isSamePlace, targetAt } from '../../server/src/editor/navigation/target.ts'
import { renamable } from '../../server/src/editor/rename/rename.ts'
import { rangeOf } from '../../server/src/job/document.ts'
import type { Place } from '../../server/src/job/model.ts'
import { openDemos } from './demos.ts'
import { openMarked, said } from './marked.ts'

const written = ({ section, span }: Place) => section.text.slice(span.start, span.end)

function definedAt(marked: string): string[] {
  const { workspace, open, view, at } = openMarked(marked)
  const place = definition(view, at.section, at.offset)
  const found = place && workspace.locate(open, place)
  return place && found ? [said(found.uri, found.range, written(place))] : []
}

const mentions = async (marked: string): Promise<string[]> => {
  const { workspace, view, at } = openMarked(marked)
  const found = await Array.fromAsync(references(view, at, await filesAround(workspace)))
  return found.map(({ at: place, in: { uri, file } }) =>
    said(uri, rangeOf(file.document, place), written(place)),
  )
}

const install = (drive: string) => `battery house { nominal: 96 V }
drive starboard {
  gear { ratio: 2.5 }
  motor propulsion { power: 15 kW  terminals: U, V, W }
  controller { terminals: A, B, C }
  bed {
    foot aft { across: 140 mm port }
    foot fwd { across: 140 mm port }
  }
  reading dry-1 { taken: 2026-03-04 }
${drive}}
`

describe('the definition', () => {
  const cases: readonly (readonly [string, string])[] = [
    ['of a block by its name', 'battery «house» { nominal: 96 V }\ndrive d { battery: ho$0use }'],
    ['of a block by its kind', 'drive d { «controller» { }\ncable c { from: control$0ler } }'],
    ['of the block it is like', 'gear «spare» { ratio: 2 }\ndrive d { gear { like: spa$0re } }'],
    [
      'of the block in another file',
      '#- parts/gears.wright\ngear «spare» { ratio: 2 }\n#- boats/a.wright\nuse "../parts/gears.wright"\ngear g { like: $0spare }',
    ],
    [
      'of a fact in an arithmetic',
      'drive d { shaft { «diameter»: 35 mm }\npropeller { diameter: 12 * shaft.dia$0meter } }',
    ],
    ['of a fact beside it', 'seal { «free-length»: 148 mm\nfitted-length: (free$0-length) - 26 mm }'],
    [
      'of a fact that is inherited, where it is written',
      'shaft stock { «diameter»: 35 mm }\ndrive d { shaft { like: stock }\npropeller { diameter: 12 * shaft.diameter$0 } }',
    ],
    [
      'of a foot that was moved',
      install('  move after dry-1 { af$0t: up 1 mm }\n').replace('foot aft', 'foot «aft»'),
    ],
    [
      'of the reading a move comes after',
      install('  move after dry$0-1 { }\n').replace('reading dry-1', 'reading «dry-1»'),
    ],
    [
      'of a terminal of the controller',
      install('  phase-map { A to U, B$0 to V }\n').replace('A, B, C', 'A, «B», C'),
    ],
    [
      'of a terminal of the motor',
      install('  phase-map { A to U, B to $0V }\n').replace('U, V, W', 'U, «V», W'),
    ],
    [
      'of what a concession is about',
      `${install('').replace('reading dry-1', 'reading «dry-1»')}concession alignment/offset-outside { on: starboard.dry$0-1 }`,
    ],
    [
      'of a segment of a path',
      `${install('').replace('drive starboard', 'drive «starboard»')}concession alignment/offset-outside { on: "star$0board.dry-1" }`,
    ],
    [
      'of a block inside another, by its kind',
      `${install('').replace('gear {', '«gear» {')}drive port { gear { ratio: starboard.ge$0ar.ratio } }`,
    ],
    ['as far as a path leads', 'drive «star» { }\ndrive d { gear { ratio: st$0ar.gaer.ratio } }'],
    [
      'as far as the path of a concession leads',
      'drive «star» { }\nconcession cable/undersized { on: st$0ar.x.y }',
    ],
    ['of a block of the wrong kind', 'motor «m» { }\ndrive d { gear { like: $0m } }'],
    ['is the name itself where it stands', 'battery «hou$0se» { }'],
  ]
  it.each(cases)('%s', (_what, marked) => {
    expect(definedAt(marked)).toEqual(openMarked(marked).expected)
  })

  it('of a `use` is the beginning of the file', () => {
    const { view, at, workspace, open } = openMarked(
      '#- parts/gears.wright\n# Gears.\ngear spare { }\n#- a.wright\nuse "parts/ge$0ars.wright"\n',
    )
    const place = definition(view, at.section, at.offset)
    expect(place && workspace.locate(open, place)).toEqual({
      uri: 'file:///jobs/parts/gears.wright',
      range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } },
    })
  })

  it.each([
    ['a word of the language', 'mot$0or main { }'],
    ['`like`', 'gear a { li$0ke: b }\ngear b { }'],
    ['where a value comes from', 'shaft { diameter: 35 mm [mak$0er] }'],
    ['a unit', 'shaft { diameter: 35 m$0m }'],
    ['a name that leads nowhere', 'drive d { gear { like: spa$0re } }'],
    ['a comment', '# ho$0use\nbattery house { }'],
  ])('is not told of %s', (_what, marked) => expect(definedAt(marked)).toEqual([]))
})

describe('references', () => {
  it.each([
    [
      'of a block, in every segment of a path',
      'drive «star$0board» { gear { ratio: 2 } }\ndrive port { gear { ratio: «starboard».gear.ratio } }\nconcession cable/undersized { on: «starboard».gear }',
    ],
    [
      'of a foot',
      'drive d { bed { foot «a$0ft» { } }\nreading r { }\nmove after r { «aft»: up 1 mm }\nmove after r { «aft»: down 1 mm } }',
    ],
    [
      'of a fact, also where it is inherited',
      'shaft stock { «diameter»: 35 mm }\ndrive d { shaft { like: stock }\npropeller { diameter: 12 * shaft.«dia$0meter» } }',
    ],
    [
      'of a part, asked where it is used',
      '#- a.wright\nuse "parts.wright"\ngear g { like: «sp$0are» }\n#- parts.wright\ngear «spare» { ratio: 2 }\ngear other { like: «spare» }\n',
    ],
    [
      'of a name that others have too',
      'drive a { reading «dry$0-1» { }\nmove after «dry-1» { } }\ndrive b { reading dry-1 { }\nmove after dry-1 { } }',
    ],
  ])('%s', async (_what, marked) => {
    expect(await mentions(marked)).toEqual(openMarked(marked).expected)
  })

  it('in the file alone are highlighted', () => {
    const marked =
      '#- parts.wright\ngear spare { }\ngear other { like: spare }\n#- a.wright\nuse "parts.wright"\ngear g { like: «spa$0re» }\ngear h { like: «spare» }\n'
    const { view, at, expected, open } = openMarked(marked)
    const found = highlights(view, at.section, at.offset)
    expect(
      found.map(({ at: place }) => said(open.uri, rangeOf(open.document, place), written(place))),
    ).toEqual(expected)
    expect(found.map(({ defines }) => defines)).toEqual([false, false])
  })
})

describe('anywhere in the demos', () => {
  it('the references of what a word stands for hold the word itself, and its definition', async () => {
    const { views, around } = await openDemos()
    let asked = 0
    for (const view of views)
      for (const section of view.file.document.sections)
        for (const token of section.parsed.tree.tokens) {
          const target = targetAt(view, section, token.startOffset)
          if (!target || target.span.start !== token.startOffset) continue
          asked += 1
          const found = await Array.fromAsync(
            references(view, { section, offset: token.startOffset }, around),
          )
          expect(found.some(({ at }) => isSamePlace(at, { section, span: target.span }))).toBe(true)
          expect(found.filter(({ defines }) => defines).map(({ at }) => at)).toEqual([target.named])
        }
    expect(asked).toBeGreaterThan(300)
  })

  const text = readFileSync(
    resolve(import.meta.dirname, '../../docs/examples/survey-launch-as-built.wright'),
    'utf8',
  )
  it('of any beginning of a demo nothing throws, and what is found lies in the text', () => {
    fc.assert(
      fc.property(fc.nat(text.length), fc.nat(text.length), (length, offset) => {
        const { view, at, open } = openMarked(
          `${text.slice(0, Math.min(length, offset))}$0${text.slice(offset, length)}`,
        )
        for (const { at: place } of highlights(view, at.section, at.offset))
          expect(open.document.sections).toContain(place.section)
        definition(view, at.section, at.offset)
        renamable(view, at.section, at.offset)
      }),
      { numRuns: 100 },
    )
  })
})
