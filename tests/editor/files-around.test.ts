// What lies in other files of the workspace, open or not: the language's own rules (design decisions, no outside source).
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { CancellationToken, LSPErrorCodes } from 'vscode-languageserver/node'
import { filesAround, filesAroundOpen } from '../../server/src/editor/navigation/around.ts'
import { linksOf } from '../../server/src/editor/navigation/document-links.ts'
import { references } from '../../server/src/editor/navigation/references.ts'
import { isSamePlace, targetAt } from '../../server/src/editor/navigation/target.ts'
import { relativeAt, subtypes, supertype } from '../../server/src/editor/navigation/type-hierarchy.ts'
import { allSymbols, matching } from '../../server/src/editor/navigation/workspace-symbols.ts'
import { rename } from '../../server/src/editor/rename/rename.ts'
import { type OpenFile, Workspace } from '../../server/src/editor/workspace/workspace.ts'
import { jobs, texts } from '../syntax/texts.ts'
import { openMarked } from './marked.ts'

const root = 'file:///jobs'
const empty = { start: -1, end: -1 }
const files: Readonly<Record<string, string>> = {
  'parts.wright': 'gear spare { ratio: 2 }\ngear strong { like: spare }\n',
  'a.wright': 'use "parts.wright"\ndrive main {\n  gear { like: spare }\n  reading dry-1 { }\n}\n',
  'b.wright': 'use "more.wright"\ndrive port {\n  gear { like: other }\n}\n',
  'more.wright': 'use "parts.wright"\ngear other { like: spare }\n',
  'unlike.wright': 'gear spare { ratio: 3 }\ngear mine { like: spare }\n',
}

/** A workspace on such a disk, with one of its files open. */
async function openOne(path: string) {
  const disk = new Map(Object.entries(files).map(([name, text]) => [`${root}/${name}`, text]))
  const workspace = new Workspace(
    (uri) => disk.get(uri),
    () => [...disk.keys()],
  )
  workspace.setFolders({ added: [root] })
  await workspace.list()
  const uri = `${root}/${path}`
  workspace.open(uri, 1, files[path] ?? '')
  const open = workspace.get(uri)
  const [section] = open?.document.sections ?? []
  if (!open || !section) throw new Error(path)
  const view = { analysis: workspace.analysis, file: workspace.link(open) }
  return { workspace, open, view, section, around: await filesAround(workspace) }
}

describe('files that are not open', () => {
  it('are each there once', async () => {
    const { around } = await openOne('parts.wright')
    expect((await Array.fromAsync(around.files())).map(({ file }) => file.path).toSorted()).toEqual(
      Object.keys(files).toSorted(),
    )
  })

  it('refer to a part that is', async () => {
    const { view, section, around } = await openOne('parts.wright')
    const found = await Array.fromAsync(references(view, { section, offset: 'gear sp'.length }, around))
    expect(found.map(({ in: { file } }) => file.path).toSorted()).toEqual([
      'a.wright',
      'more.wright',
      'parts.wright',
      'parts.wright',
    ])
  })

  it('are renamed with it', async () => {
    const { view, section, around } = await openOne('parts.wright')
    const found = await rename(view, { section, offset: 'gear sp'.length }, { to: 'stock', around })
    const changed = 'refused' in found ? [found.refused] : found.map(({ uri }) => uri.slice(root.length + 1))
    expect(changed.toSorted()).toEqual(['a.wright', 'more.wright', 'parts.wright', 'parts.wright'])
  })

  it('keep a name of theirs from being taken', async () => {
    const { view, section, around } = await openOne('parts.wright')
    const found = await rename(view, { section, offset: 'gear sp'.length }, { to: 'other', around })
    expect(found).toEqual({
      refused: 'spare in more.wright, line 2, would then mean something else.',
    })
  })
})

// LSP 3.17, ContentModified: what was asked is of a text that is no more.
it.each([true, false])(
  'what is asked of a text is refused where that is edited while files are listed: %j',
  async (edited) => {
    const { promise, resolve } = Promise.withResolvers<readonly string[]>()
    const workspace = new Workspace(
      () => undefined,
      () => promise,
    )
    workspace.setFolders({ added: [root] })
    const uri = `${root}/parts.wright`
    workspace.open(uri, 1, 'gear spare { }\n')
    const [open] = workspace.openFiles
    if (!open) throw new Error('not open')
    const around = filesAroundOpen({ workspace, open, token: CancellationToken.None, progress: () => {} })
    if (edited) workspace.change(uri, 2, [{ text: '\n' }])
    resolve([])
    const found = await around
    if (edited) expect(found).toMatchObject({ code: LSPErrorCodes.ContentModified })
    else expect('code' in found ? [] : [...found.known]).toHaveLength(1)
  },
)

describe('blocks of the workspace', () => {
  const names = async (query: string) => {
    const { workspace } = await openOne('a.wright')
    return matching(query, await allSymbols(workspace)).map(
      ({ name, container, location }) => `${location.uri.slice(root.length + 1)} ${container}/${name}`,
    )
  }

  it('are found by name first, then by kind, then by words of path and kind', async () => {
    expect(await names('spare')).toEqual(['parts.wright /spare', 'unlike.wright /spare'])
    expect(await names('STRO')).toEqual(['parts.wright /strong'])
    expect(await names('read')).toEqual(['a.wright main/dry-1'])
    expect(await names('maindry')).toEqual(['a.wright main/dry-1'])
    expect(await names('xyz')).toEqual([])
    expect((await names('')).length).toBe(10)
  })

  it.each([
    ['ab', true],
    ['aftbea', true],
    ['aft b', true],
    ['a-be', true],
    ['aft-bearing', true],
    ['bearing', true],
    ['Bear', true],
    ['main.aft', true],
    ['mab', true],
    ['mb', true],
    ['', true],
    ['ft', false],
    ['ear', false],
    ['bearingaft', false],
    ['aftbearings', false],
    ['abm', false],
  ])('are found by beginnings of their words, in order: %j', (query, is) => {
    const range = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } }
    const symbol = { name: 'aft-bearing', kind: 'bearing', container: 'main', location: { uri: 'a', range } }
    expect(matching(query, [symbol])).toHaveLength(is ? 1 : 0)
  })

  it('are not found by letters scattered over their words', () => {
    const range = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } }
    const at = { uri: 'a', range }
    const names = ['starboard-bank', 'dry-1', 'second-Dryer', 'hydraulics'].map((name) => ({
      name,
      kind: 'battery',
      container: '',
      location: at,
    }))
    expect(matching('dry', names).map(({ name }) => name)).toEqual(['dry-1', 'second-Dryer'])
    expect(matching('BATT', names)).toHaveLength(4)
  })

  it('are as they stand now', async () => {
    const { workspace, open } = await openOne('a.wright')
    await allSymbols(workspace)
    const start = { line: 0, character: 0 }
    workspace.change(open.uri, 2, [{ range: { start, end: start }, text: 'battery quite-new { }\n' }])
    const [found] = matching('quite', await allSymbols(workspace))
    expect(found).toMatchObject({
      name: 'quite-new',
      location: { range: { start: { line: 0, character: 8 } } },
    })
  })
})

describe('links', () => {
  it('lead to the files that are used, and to the checks that are conceded', () => {
    const { view } = openMarked(
      '#- parts/gears.wright\n\n#- a.wright\nuse "parts/gears.wright"\nuse "none.wright"\nconcession cable/undersized { }\nconcession cable/none-such { }$0\n',
    )
    const found = linksOf(view.file).map((link) => [
      link.at.section.text.slice(link.at.span.start, link.at.span.end),
      'path' in link ? link.path : link.check,
    ])
    expect(found).toEqual([
      ['parts/gears.wright', 'parts/gears.wright'],
      ['cable/undersized', 'cable/undersized'],
    ])
  })
})

describe('the hierarchy of `like`', () => {
  it('goes up to what a block is like, and down to what is like it', async () => {
    const { view, section, around } = await openOne('more.wright')
    const use = view.file.document.sections[1] ?? section
    const found = relativeAt(view, { section: use, offset: use.text.indexOf('other') }, around)
    const block = found?.block
    if (!block) throw new Error('no block there')
    const up = supertype(view, block, around)
    expect([up?.block.path, up?.in.file.path]).toEqual(['spare', 'parts.wright'])
    const down = await Array.fromAsync(subtypes(block, around))
    expect(down.map(({ block: { path }, in: of }) => [path, of.file.path])).toEqual([
      ['port.gear', 'b.wright'],
    ])
    const all = up ? await Array.fromAsync(subtypes(up.block, around)) : []
    expect(all.map(({ block: { path } }) => path).toSorted()).toEqual(['main.gear', 'other', 'strong'])
  })

  it('ends at a block that is like nothing', async () => {
    const { view, section, around } = await openOne('parts.wright')
    const found = relativeAt(view, { section, offset: 'gear sp'.length }, around)
    expect(found && supertype(view, found.block, around)).toBeUndefined()
  })
})

describe('any text at all', () => {
  it('is gone through without a fault: each word is among the references of what it stands for', async () => {
    const shares = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 5, maxLength: 5 })
    await fc.assert(
      fc.asyncProperty(fc.oneof(jobs, texts), shares, async (text, at) => {
        const workspace = new Workspace((uri) =>
          uri.endsWith('/parts.wright') ? files['parts.wright'] : undefined,
        )
        workspace.setFolders({ added: [root] })
        workspace.open(`${root}/a.wright`, 1, text)
        const around = await filesAround(workspace)
        const view = {
          analysis: workspace.analysis,
          file: workspace.link(workspace.openFiles[0] as OpenFile),
        }
        for (const share of at) {
          const section = view.file.document.sections.at(
            Math.floor(share * view.file.document.sections.length),
          )
          if (!section) continue
          const offset = Math.floor(share * section.text.length)
          const target = targetAt(view, section, offset)
          const found = await Array.fromAsync(references(view, { section, offset }, around))
          expect(
            found.some(({ at: place }) => isSamePlace(place, { section, span: target?.span ?? empty })),
          ).toBe(target !== undefined)
          await rename(view, { section, offset }, { to: 'spare', around })
          const relative = relativeAt(view, { section, offset }, around)
          if (!relative) continue
          supertype({ ...view, file: relative.in.file }, relative.block, around)
          await Array.fromAsync(subtypes(relative.block, around))
        }
      }),
      { numRuns: 150 },
    )
  })
})
