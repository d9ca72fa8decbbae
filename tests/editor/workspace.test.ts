import { describe, expect, it } from 'vitest'
import { allChecks } from '../../server/src/areas/index.ts'
import { Checker } from '../../server/src/checks/run.ts'
import { Workspace } from '../../server/src/editor/workspace/workspace.ts'
import { openDocument } from '../../server/src/job/document.ts'

const job = 'file:///jobs/boat.wright'
const parts = 'file:///jobs/parts.wright'

/** A workspace whose files come when they are let come. */
function later(files: Record<string, string>) {
  const waiting: { readonly uri: string; readonly come: () => void }[] = []
  const workspace = new Workspace(
    (uri) => new Promise((done) => void waiting.push({ uri, come: () => done(files[uri]) })),
  )
  workspace.setFolders({ added: ['file:///jobs'] })
  const come = () => {
    for (const { come: one } of waiting.splice(0)) one()
  }
  return { workspace, waiting, come }
}

describe('a file that comes later', () => {
  it('is asked for once, waited for, and told of when it is there', async () => {
    const { workspace, waiting, come } = later({ [parts]: 'shaft s { diameter: 35 mm }\n' })
    const told: string[] = []
    workspace.onText = (uri) => told.push(uri)
    workspace.open(job, 1, 'use "parts.wright"\n')
    const open = workspace.get(job)
    if (!open) throw new Error('not open')
    expect(workspace.link(open).used).toEqual([])
    workspace.change(job, 2, [{ text: 'use "parts.wright"\n\n' }])
    const now = workspace.get(job)
    if (!now) throw new Error('not open')
    const whole = workspace.whole(now)
    expect(whole).toBeInstanceOf(Promise)
    expect(waiting.map(({ uri }) => uri)).toEqual([parts])
    come()
    await whole
    expect(told).toEqual([parts])
    expect(workspace.whole(now)).toBeUndefined()
    expect(workspace.link(now).used.map(({ path }) => path)).toEqual(['parts.wright'])
    expect(workspace.link(now).problems).toEqual([])
  })

  it('may use another one, which is waited for too', async () => {
    const { workspace, come } = later({
      [parts]: 'use "more.wright"\n',
      'file:///jobs/more.wright': '# no\n',
    })
    workspace.open(job, 1, 'use "parts.wright"\n')
    const open = workspace.get(job)
    if (!open) throw new Error('not open')
    const whole = workspace.whole(open)
    come()
    await Promise.resolve().then(() => Promise.resolve())
    setImmediate(come)
    await whole
    expect(workspace.link(open).used.map(({ path }) => path)).toEqual(['parts.wright', 'more.wright'])
  })
})

describe('a change of one file', () => {
  it('touches those that use it, through others and before it is there, and no others', () => {
    const workspace = new Workspace((uri) => (uri === parts ? 'use "more.wright"\n' : undefined))
    workspace.setFolders({ added: ['file:///jobs'] })
    workspace.open(job, 1, 'use "parts.wright"\n')
    workspace.open('file:///jobs/other.wright', 1, '')
    const touched = (uri: string) => workspace.touchedBy([uri]).map((open) => open.uri)
    expect(touched(parts)).toEqual([job])
    expect(touched('file:///jobs/more.wright')).toEqual([job])
    expect(touched('file:///jobs/none.wright')).toEqual([])
  })

  it('leaves the links of the others as they are', () => {
    const workspace = new Workspace(() => undefined)
    workspace.open(job, 1, '')
    workspace.open('file:///jobs/other.wright', 1, '')
    const [a, b] = workspace.openFiles
    if (!a || !b) throw new Error('not open')
    const kept = workspace.link(a)
    workspace.change(b.uri, 2, [{ text: '\n' }])
    expect(workspace.link(a)).toBe(kept)
  })
})

describe('a file that means more where another uses it', () => {
  const texts = {
    'file:///yard/boat.wright': 'use "in/parts.wright"\ngear here { like: parted }\n',
    'file:///yard/in/parts.wright': 'use "../stock.wright"\ngear parted { like: stocked }\n',
    'file:///yard/stock.wright': 'gear stocked { ratio: 2.5 }\n',
  }
  const [boat, inner] = Object.keys(texts) as [string, string]

  it.each([
    [[], [boat, inner]],
    [[], [inner, boat]],
    [
      ['file:///yard', 'file:///yard/in'],
      [boat, inner],
    ],
    [
      ['file:///yard', 'file:///yard/in'],
      [inner, boat],
    ],
  ])('means the same whichever is asked first: %j open, %j', (added, order) => {
    const workspace = new Workspace(() => undefined)
    workspace.setFolders({ added })
    for (const [uri, text] of Object.entries(texts)) workspace.open(uri, 1, text)
    const checker = new Checker(workspace.analysis, allChecks)
    const found = order.map((uri) => {
      const open = workspace.get(uri)
      const findings = open && checker.check(workspace.link(open), { today: '2026-03-10' })
      return [uri, findings?.map(({ check }) => check)] as const
    })
    expect(Object.fromEntries(found)).toEqual({ [boat]: [], [inner]: ['job/file-outside', 'job/unresolved'] })
  })
})

describe('a path of a `use`', () => {
  // docs/editors.md
  it.each([
    ['file:///yard/boats/a.wright', '../stock.wright', ['file:///yard'], false],
    ['file:///yard/boats/a.wright', '../stock.wright', ['file:///yard', 'file:///yard/boats'], true],
    ['file:///yard/boats/a.wright', '../stock.wright', [], true],
    ['file:///yard/boats/a.wright', '../stock.wright', ['file:///other'], true],
    ['file:///yard/boats/a.wright', 'in/stock.wright', [], false],
    ['file:///yard/boats/a.wright', '/yard/boats/stock.wright', ['file:///yard'], true],
  ])('of %s, %s, with %j open', (uri, path, added, isOutside) => {
    const workspace = new Workspace(() => '')
    workspace.setFolders({ added })
    workspace.open(uri, 1, `use "${path}"\n`)
    const [open] = workspace.openFiles
    const problems = open && workspace.link(open).problems.map(({ problem }) => problem.type)
    expect(problems).toEqual(isOutside ? ['use-outside'] : [])
  })
})

describe('the job files of the folders', () => {
  it('are listed once where one folder lies in the other', async () => {
    const files = ['file:///jobs/a.wright', 'file:///jobs/in/b%20c.wright']
    const workspace = new Workspace(
      () => undefined,
      async (root) => files.filter((file) => file.startsWith(root)),
    )
    workspace.setFolders({ added: ['file:///jobs', 'file:///jobs/in/'] })
    expect(await workspace.list()).toEqual(files)
    expect(workspace.paths).toEqual(files)
  })

  it.each([
    ['file:///jobs/x.wright', ['a.wright', 'in/b c.wright']],
    ['file:///jobs/in/x.wright', ['b c.wright']],
    ['file:///other/x.wright', []],
    ['untitled:Untitled-1', []],
  ])('are offered to %s as far as it may use them', async (uri, wanted) => {
    const files = ['file:///jobs/a.wright', 'file:///jobs/in/b%20c.wright']
    const workspace = new Workspace(
      () => undefined,
      () => files,
    )
    workspace.setFolders({ added: ['file:///jobs', 'file:///jobs/in'] })
    await workspace.list()
    expect(workspace.pathsFor({ uri, version: 1, document: openDocument('') })).toEqual(wanted)
  })

  it.each(['file:///', 'file:///c:/', 'file:///C%3A/', 'file:/'])(
    'are not looked for on a whole disk: %s',
    async (disk) => {
      const listed: string[] = []
      const workspace = new Workspace(
        () => undefined,
        (root) => {
          listed.push(root)
          return []
        },
      )
      const folder = 'file:///jobs'
      expect(workspace.setFolders({ added: [disk, folder] })).toEqual([disk])
      await workspace.list()
      expect(listed).toEqual([folder])
      // A job then reaches as far as one without a folder: no further than its own.
      workspace.open('file:///c:/boats/a.wright', 1, 'use "../stock.wright"\n')
      const [open] = workspace.openFiles
      expect(open && workspace.link(open).problems.map(({ problem }) => problem.type)).toEqual([
        'use-outside',
      ])
    },
  )
})
