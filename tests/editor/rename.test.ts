// Another name for what has one: the language's own rules (design decisions, no outside source).
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../server/src/areas/index.ts'
import { Checker } from '../../server/src/checks/run.ts'
import { filesAround } from '../../server/src/editor/navigation/around.ts'
import { type Rewritten, renamable, rename } from '../../server/src/editor/rename/rename.ts'
import type { Workspace } from '../../server/src/editor/workspace/workspace.ts'
import { rangeOf, textOf } from '../../server/src/job/document.ts'
import type { Section } from '../../server/src/job/model.ts'
import { isName } from '../../server/src/syntax/segments.ts'
import { openDemos } from './demos.ts'
import { openMarked } from './marked.ts'

const to = 'brand-new'

/** The texts afterwards, by path; or why not. */
async function renamed(marked: string, name = to): Promise<Readonly<Record<string, string>> | string> {
  const { workspace, view, at } = openMarked(marked)
  const found = await rename(view, at, { to: name, around: await filesAround(workspace) })
  if ('refused' in found) return found.refused
  await apply(workspace, found, name)
  const files = await Array.fromAsync((await filesAround(workspace)).files())
  return Object.fromEntries(files.map(({ file }) => [file.path, textOf(file.document)]))
}

/** Every file that is changed is open: those of the fixture that are not are opened first. */
async function apply(workspace: Workspace, found: readonly Rewritten[], name: string) {
  for (const uri of new Set(found.map((place) => place.uri))) {
    const text = await workspace.textOf(uri)
    if (!workspace.get(uri)) workspace.open(uri, 0, String(text))
    const changes = found
      .filter((place) => place.uri === uri)
      .map(({ range }) => ({ range, text: name }))
      .toReversed()
    workspace.change(uri, (workspace.get(uri)?.version ?? 0) + 1, changes)
  }
}

describe('rename', () => {
  it.each([
    [
      'a drive, wherever a path leads through it',
      'drive «star$0board» { gear { ratio: 2 } }\ndrive port { gear { ratio: «starboard».gear.ratio } }\nconcession cable/undersized { on: «starboard».gear }\n',
    ],
    [
      'a reading, in the moves and concessions about it',
      'drive d { reading «dry$0-1» { }\nmove after «dry-1» { } }\nconcession cable/undersized { on: "d.«dry-1»" }\n',
    ],
    [
      'a cable, in the fuse that it names too',
      'cable «fe$0ed» { to: fuse }\nprotection fuse { in: «feed» }\n',
    ],
    [
      'a fuse, in the cable that it names too',
      'cable feed { to: «fuse» }\nprotection «fu$0se» { in: feed }\n',
    ],
    [
      'a foot, in the moves',
      'drive d { bed { foot «aft» { } }\nreading r { }\nmove after r { «a$0ft»: up 1 mm } }\n',
    ],
    [
      'a terminal, in the phase map',
      'drive d { controller { terminals: A, «B»\n}\nmotor { terminals: "«U»", V\n}\nphase-map { A to «U$0» } }\n'.replace(
        '«B»',
        'B',
      ),
    ],
    [
      'only what goes by the name, not what goes by the kind',
      'drive d { motor «mai$0n» { }\ncontroller { }\ncable a { from: controller\nto: motor }\ncable b { from: controller\nto: «main» } }\n',
    ],
  ])('of %s', async (_what, marked) => {
    const text = marked.replace('$0', '').replaceAll(/«[^»]*»/g, to)
    expect(await renamed(marked.replaceAll(/[«»]/g, ''))).toEqual({ 'boat.wright': text })
  })

  it('tells two of one name apart again', async () => {
    const twice = 'gear g { like: main }\ngear main { }\ngear ma$0in { }\n'
    expect(await renamed(twice)).toEqual({ 'boat.wright': twice.replace('ma$0in', to) })
  })

  it('does not let a name that led nowhere lead here', async () => {
    expect(await renamed('gear g { like: none }\ngear ma$0in { }\n', 'none')).toEqual(
      expect.stringContaining('none means something else there'),
    )
  })

  it('goes through every file', async () => {
    const files =
      '#- a.wright\nuse "b.wright"\ngear g { like: spa$0re }\n#- b.wright\ngear spare { ratio: 2 }\n'
    expect(await renamed(files)).toEqual({
      'a.wright': 'use "b.wright"\ngear g { like: brand-new }\n',
      'b.wright': 'gear brand-new { ratio: 2 }\n',
    })
  })

  const two = 'gear spa$0re { }\ngear other { }\ndrive d { gear { like: spare } }\n'
  it.each([
    ['a word with a space', two, 'a b', 'is not a name'],
    ['a number', two, '3', 'is not a name'],
    ['a path', two, 'a.b', 'is not a name'],
    ['nothing', two, '', 'is not a name'],
    ['a name taken beside it', two, 'other', 'There is already a gear other.'],
    ['a kind of block', two, 'motor', 'motor is a word of the language'],
    ['a fact of a move, for a foot', 'bed { foot af$0t { } }', 'by', 'means something else in a move'],
    ['a terminal that is there', 'motor { terminals: U$0, V }', 'V', 'already has a terminal V'],
    [
      'a name that another would hide',
      'battery hou$0se { nominal: 96 V }\ndrive d { controller feed { }\nbattery: house\ncable c { from: house } }\n',
      'feed',
      'house in boat.wright, line 4, would then mean something else.',
    ],
    [
      'a name that the file has for another part',
      '#- a.wright\nuse "b.wright"\ngear mine { ratio: 3 }\ngear g { like: spa$0re }\n#- b.wright\ngear spare { ratio: 2 }\n',
      'mine',
      'spare in a.wright, line 3, would then mean something else.',
    ],
  ])('to %s is refused', async (_what, marked, name, words) => {
    expect(await renamed(marked, name)).toEqual(expect.stringContaining(words))
  })

  it.each([
    ['a kind', 'mot$0or main { }', 'motor is a word of the language.'],
    ['a fact', 'shaft { diame$0ter: 35 mm }', 'diameter is a word of the language.'],
    ['a unit', 'shaft { diameter: 35 m$0m }', 'mm is a unit.'],
    ['a word of a list', 'gear { turns: oppo$0site }', 'opposite is not the name of anything'],
    ['a block without a name', 'drive d { contro$0ller { } }', 'This controller has no name'],
    ['a block by its kind', 'drive d { motor main { }\ncable c { to: mo$0tor } }', 'rename it where'],
    ['nothing', '# com$0ment\n', 'There is no name here.'],
  ])('of %s is refused', async (_what, marked, words) => {
    expect(await renamed(marked)).toEqual(expect.stringContaining(words))
  })

  it('offers the word without its quotes', () => {
    const { view, at, open } = openMarked('motor { terminals: "U$01", V }')
    const found = renamable(view, at.section, at.offset)
    expect(
      'name' in found && [found.name, rangeOf(open.document, { section: at.section, span: found.span })],
    ).toEqual(['U1', { start: { line: 0, character: 20 }, end: { line: 0, character: 22 } }])
  })

  it('knows a name', () => {
    expect(['dry-1', 'måling', '轴', 'main2'].filter(isName)).toHaveLength(4)
    expect(['', '1a', 'a:', 'a b', '"a"', '#a', 'a\n', '2026-03-04'].some(isName)).toBe(false)
  })
})

describe('in the demos', () => {
  const checkAll = (workspace: Workspace) =>
    workspace.openFiles.map((open) =>
      new Checker(workspace.analysis, allChecks)
        .check(workspace.link(open), { today: '2026-06-01' })
        .map(({ check, severity, at }) => [check, severity, rangeOf(open.document, at).start.line]),
    )
  const texts = (workspace: Workspace) => workspace.openFiles.map(({ document }) => textOf(document))

  /** Every name, where it is defined. */
  async function names() {
    const { views } = await openDemos()
    return views.flatMap(({ analysis, file, uri }) =>
      file.document.sections.flatMap((section, i) =>
        section.parsed.tree.tokens.flatMap(({ startOffset }) => {
          const found = renamable({ analysis, file }, section, startOffset)
          return 'name' in found && found.target.named.section === section && found.span.start === startOffset
            ? [{ uri, i, offset: startOffset, name: found.name }]
            : []
        }),
      ),
    )
  }

  it('leaves every finding, and back again gives the text', { timeout: 60_000 }, async () => {
    const all = await names()
    expect(all.length).toBeGreaterThan(50)
    await fc.assert(
      fc.asyncProperty(fc.constantFrom(...all), async ({ uri, i, offset, name }) => {
        const { workspace } = await openDemos()
        const before = { texts: texts(workspace), findings: checkAll(workspace) }
        const give = async (other: string, at: (text: string) => number) => {
          const open = workspace.get(uri)
          if (!open) throw new Error(uri)
          const view = { analysis: workspace.analysis, file: workspace.link(open) }
          const section = open.document.sections[i] as Section
          const found = await rename(
            view,
            { section, offset: at(section.text) },
            { to: other, around: await filesAround(workspace) },
          )
          if ('refused' in found) throw new Error(found.refused)
          await apply(workspace, found, other)
        }
        await give(to, () => offset)
        expect(checkAll(workspace)).toEqual(before.findings)
        expect(texts(workspace)).not.toEqual(before.texts)
        await give(name, (text) => text.indexOf(to))
        expect(texts(workspace)).toEqual(before.texts)
      }),
      { numRuns: 10 },
    )
  })
})
