import { describe, expect, it } from 'vitest'
import {
  CancellationTokenSource,
  LSPErrorCodes,
  type WorkspaceDiagnosticParams,
  type WorkspaceDocumentDiagnosticReport,
} from 'vscode-languageserver/node'
import { Pulled } from '../../server/src/editor/diagnostics/pulled.ts'
import { Workspace } from '../../server/src/editor/workspace/workspace.ts'

const root = 'file:///jobs'
const quiet = { begin: () => {}, report: () => {}, done: () => {} }

async function archive(files: Record<string, string>, { watches = true } = {}) {
  const workspace = new Workspace(
    (uri) => files[uri.slice(root.length + 1)],
    async () => Object.keys(files).map((path) => `${root}/${path}`),
  )
  workspace.setFolders({ added: [root] })
  const looked: string[] = []
  const faults: string[] = []
  let day = '2026-03-04'
  const pulled = new Pulled({
    workspace,
    find: ({ uri }) => {
      looked.push(uri.slice(root.length + 1))
      if (uri.endsWith('/bad.wright')) throw new Error('made to fail')
      return []
    },
    watches: () => watches,
    today: () => day,
    onFault: (uri) => faults.push(uri.slice(root.length + 1)),
  })
  const walk = async (params: Partial<WorkspaceDiagnosticParams> = {}) => {
    const source = new CancellationTokenSource()
    const { items } = await pulled.workspace(
      { previousResultIds: [], ...params },
      source.token,
      quiet,
      undefined,
    )
    return { items, looked: looked.splice(0) }
  }
  const tomorrow = () => {
    day = '2026-03-05'
  }
  return { files, pulled, walk, faults, looked, tomorrow }
}

describe('all job files', () => {
  const files = { 'a.wright': 'use "b.wright"\n', 'b.wright': '', 'c.wright': '' }

  it('are looked at once; after a change those that it touches', async () => {
    const { pulled, walk } = await archive({ ...files })
    expect((await walk()).looked).toEqual(['a.wright', 'b.wright', 'c.wright'])
    expect((await walk()).looked).toEqual([])
    pulled.changed([`${root}/b.wright`])
    expect((await walk()).looked).toEqual(['a.wright', 'b.wright'])
    pulled.changed()
    expect((await walk()).looked).toHaveLength(3)
  })

  it('are looked at again on another day, and each time where nobody watches the disk', async () => {
    const { walk, tomorrow } = await archive({ ...files })
    await walk()
    tomorrow()
    expect((await walk()).looked).toHaveLength(3)
    const unwatched = await archive({ ...files }, { watches: false })
    await unwatched.walk()
    const { items, looked } = await unwatched.walk()
    expect(looked).toHaveLength(3)
    const previousResultIds = items.map(({ uri, resultId }) => ({ uri, value: resultId ?? '' }))
    expect((await unwatched.walk({ previousResultIds })).items.map(({ kind }) => kind)).toEqual(
      items.map(() => 'unchanged'),
    )
  })

  it('but one that fails are answered', async () => {
    const { walk, faults } = await archive({ 'bad.wright': '', 'c.wright': '' })
    expect((await walk()).items.map(({ uri }) => uri)).toEqual([`${root}/c.wright`])
    expect(faults).toEqual(['bad.wright'])
  })

  it('with news are answered at once, though the last one is as the editor knows it', async () => {
    const { pulled, walk } = await archive({ ...files })
    const { items } = await walk()
    const previousResultIds = items.map(({ uri, resultId = '' }, i) => ({
      uri,
      value: i === 0 ? 'older' : resultId,
    }))
    const source = new CancellationTokenSource()
    const given: string[] = []
    const answer = pulled.workspace({ previousResultIds }, source.token, quiet, {
      report: ({ items: [item] }) => {
        given.push(item?.kind ?? '')
        // What waits for a change ends here.
        if (given.length === items.length) setImmediate(() => source.cancel())
      },
    })
    await expect(answer).resolves.toEqual({ items: [] })
    expect(given).toEqual(['full', 'unchanged', 'unchanged'])
  })

  it('are left where they are when the answer is not wanted any more', async () => {
    const { pulled, looked } = await archive({ ...files })
    const source = new CancellationTokenSource()
    const given: WorkspaceDocumentDiagnosticReport[] = []
    const answer = pulled.workspace({ previousResultIds: [] }, source.token, quiet, {
      report: ({ items }) => {
        given.push(...items)
        source.cancel()
      },
    })
    await expect(answer).rejects.toMatchObject({ code: LSPErrorCodes.RequestCancelled })
    expect([given.length, looked.length]).toEqual([1, 1])
  })
})
