import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import {
  CancellationTokenSource,
  type DocumentDiagnosticReport,
  LSPErrorCodes,
  ProgressType,
  PublishDiagnosticsNotification,
  type PublishDiagnosticsParams,
  type WorkspaceDiagnosticReport,
  type WorkspaceDocumentDiagnosticReport,
} from 'vscode-languageserver/node'
import { type Client, codes, frame, startProcess } from './client.ts'

// What is asked and answered: LSP 3.17, Pull Diagnostics.

const faulty = 'drive d {\n  shaft { diameter: 35 }\n}\n'
const sound = 'drive d {\n  shaft { diameter: 35 mm }\n}\n'

type Served = Awaited<ReturnType<typeof startProcess>>

const changed = (client: Client, uri: string, version: number, contentChanges: readonly object[]) =>
  void client.connection.sendNotification('textDocument/didChange', {
    textDocument: { uri, version },
    contentChanges,
  })

describe('an editor that asks for findings', () => {
  const base = mkdtempSync(join(tmpdir(), 'shaftwright-'))
  const at = (...path: readonly string[]) => pathToFileURL(join(base, ...path)).href
  const job = at('a', 'job.wright')
  const parts = at('a', 'parts.wright')
  let served: Served
  let client: Client
  let settings: object | null = { findings: { delay: 0 } }
  const pushed: PublishDiagnosticsParams[] = []
  let again: () => void = () => {}

  const ask = (uri: string, previousResultId?: string) =>
    client.connection.sendRequest<DocumentDiagnosticReport>('textDocument/diagnostic', {
      textDocument: { uri },
      previousResultId,
    })
  const asked = async (uri: string) => {
    const report = await ask(uri)
    if (report.kind !== 'full') throw new Error('not full')
    return report
  }
  const askAll = (more: object = {}) =>
    client.connection.sendRequest<WorkspaceDiagnosticReport>('workspace/diagnostic', {
      previousResultIds: [],
      ...more,
    })
  const askedAgain = () =>
    new Promise<void>((done) => {
      again = done
    })
  const known = (items: readonly WorkspaceDocumentDiagnosticReport[]) =>
    items.map(({ uri, resultId }) => ({ uri, value: resultId }))
  /** A disk that changes, and an editor that watches it. */
  const put = async (text: string, ...path: readonly string[]) => {
    writeFileSync(join(base, ...path), text)
    await client.connection.sendNotification('workspace/didChangeWatchedFiles', {
      changes: [{ uri: at(...path), type: 2 }],
    })
  }

  beforeAll(async () => {
    mkdirSync(join(base, 'a'))
    mkdirSync(join(base, 'b'))
    writeFileSync(join(base, 'a', 'parts.wright'), 'shaft stock { diameter: 35 mm }\n')
    writeFileSync(join(base, 'a', 'job.wright'), 'use "parts.wright"\ndrive d { shaft { like: stock } }\n')
    writeFileSync(join(base, 'b', 'other.wright'), faulty)
    const registered: string[] = []
    served = await startProcess(
      {
        workspaceFolders: ['a', 'b'].map((name) => ({ uri: at(name), name })),
        capabilities: {
          textDocument: { diagnostic: {} },
          workspace: {
            configuration: true,
            diagnostics: { refreshSupport: true },
            didChangeWatchedFiles: { dynamicRegistration: true },
            didChangeConfiguration: { dynamicRegistration: true },
          },
        },
      },
      (connection) => {
        connection.onRequest('workspace/configuration', () => [settings])
        connection.onRequest(
          'client/registerCapability',
          ({ registrations }: { registrations: readonly { method: string }[] }) => {
            registered.push(...registrations.map(({ method }) => method))
            return null
          },
        )
        connection.onRequest('workspace/diagnostic/refresh', () => {
          again()
          return null
        })
      },
    )
    client = served.client
    client.connection.onNotification(PublishDiagnosticsNotification.type, (told) => void pushed.push(told))
    await ask(job)
    expect(registered).toEqual(['workspace/didChangeWatchedFiles', 'workspace/didChangeConfiguration'])
  })
  afterAll(async () => {
    expect(pushed).toEqual([])
    expect(await served.stop()).toBe(0)
    rmSync(base, { recursive: true })
  })

  it('is told that it can', () =>
    expect(client.initialized.capabilities.diagnosticProvider).toMatchObject({
      interFileDependencies: true,
      workspaceDiagnostics: true,
    }))

  it('gets them all, or that they are those it has', async () => {
    const uri = 'untitled:A'
    client.open(uri, faulty)
    const report = await asked(uri)
    expect(codes(report.items)).toContain('job/unit-missing')
    expect(await ask(uri, report.resultId)).toEqual({ kind: 'unchanged', resultId: report.resultId })
    changed(client, uri, 2, [{ text: sound }])
    const next = await ask(uri, report.resultId)
    expect(next).toMatchObject({ kind: 'full' })
    expect(next.resultId).not.toBe(report.resultId)
    expect(codes((next as typeof report).items)).not.toContain('job/unit-missing')
  })

  it('gets those of a file that is not open, and none of one that is not there', async () => {
    expect(codes((await asked(at('b', 'other.wright'))).items)).toContain('job/unit-missing')
    expect(await ask(at('b', 'none.wright'))).toEqual({ kind: 'full', items: [] })
    expect(await ask('untitled:None')).toEqual({ kind: 'full', items: [] })
  })

  it('is told to ask again when another file changes what is found in an open one', async () => {
    client.open(job, 'use "parts.wright"\ndrive d { shaft { like: stock } }\n')
    expect(codes((await asked(job)).items)).not.toContain('job/unresolved')
    let told = askedAgain()
    await put('shaft other { diameter: 35 mm }\n', 'a', 'parts.wright')
    await told
    expect(codes((await asked(job)).items)).toContain('job/unresolved')
    told = askedAgain()
    client.open(parts, 'shaft stock { diameter: 35 mm }\n')
    await told
    expect(codes((await asked(job)).items)).not.toContain('job/unresolved')
    told = askedAgain()
    await client.connection.sendNotification('textDocument/didClose', { textDocument: { uri: parts } })
    await told
    expect(codes((await asked(job)).items)).toContain('job/unresolved')
    await put('shaft stock { diameter: 35 mm }\n', 'a', 'parts.wright')
  })

  it('gets those of all job files of all folders, and then only what is other', async () => {
    const { items } = await askAll()
    expect(items.map(({ uri, version }) => [uri, version])).toEqual([
      [job, 1],
      [parts, null],
      [at('b', 'other.wright'), null],
    ])
    const second = await askAll({ previousResultIds: known(items) })
    expect(second.items.map(({ kind }) => kind)).toEqual(['unchanged', 'unchanged', 'unchanged'])
    await put(sound, 'b', 'other.wright')
    const third = await askAll({ previousResultIds: known(items) })
    expect(third.items.map(({ kind }) => kind)).toEqual(['unchanged', 'unchanged', 'full'])
    await put(faulty, 'b', 'other.wright')
  })

  it('gets an empty report of a file that is gone', async () => {
    await put(faulty, 'b', 'gone.wright')
    const { items } = await askAll()
    expect(items).toHaveLength(4)
    rmSync(join(base, 'b', 'gone.wright'))
    const uri = at('b', 'gone.wright')
    await client.connection.sendNotification('workspace/didChangeWatchedFiles', {
      changes: [{ uri, type: 3 }],
    })
    const next = await askAll({ previousResultIds: known(items) })
    expect(next.items).toContainEqual({ kind: 'full', uri, version: null, items: [] })
  })

  it('gets them one by one with progress; when it knows them all, at the next change', async () => {
    const each: WorkspaceDocumentDiagnosticReport[] = []
    const progress: { readonly kind: string; readonly percentage?: number }[] = []
    const reports = new ProgressType<WorkspaceDiagnosticReport>()
    client.connection.onProgress(reports, 'each', ({ items }) => void each.push(...items))
    client.connection.onProgress(new ProgressType<(typeof progress)[number]>(), 'done', (value) => {
      progress.push(value)
    })
    expect(await askAll({ partialResultToken: 'each', workDoneToken: 'done' })).toEqual({ items: [] })
    expect(each).toHaveLength(3)
    expect(progress.map(({ kind }) => kind)).toEqual(['begin', 'report', 'report', 'report', 'end'])
    expect(progress[3]?.percentage).toBe(100)

    const later: WorkspaceDocumentDiagnosticReport[] = []
    client.connection.onProgress(reports, 'later', ({ items }) => void later.push(...items))
    let answered = false
    const answer = askAll({ partialResultToken: 'later', previousResultIds: known(each) }).finally(() => {
      answered = true
    })
    await asked(job)
    await asked(job)
    expect(answered).toBe(false)
    await put(sound, 'b', 'other.wright')
    await answer
    expect(later.filter(({ kind }) => kind === 'full').map(({ uri }) => uri)).toEqual([
      at('b', 'other.wright'),
    ])
    await put(faulty, 'b', 'other.wright')
  })

  it('gets no answer to what it waits for and does not want any more', async () => {
    const { items } = await askAll()
    const cancel = new CancellationTokenSource()
    const waits = client.connection.sendRequest(
      'workspace/diagnostic',
      { previousResultIds: known(items), partialResultToken: 'cancelled' },
      cancel.token,
    )
    await asked(job)
    cancel.cancel()
    await expect(waits).rejects.toMatchObject({ code: LSPErrorCodes.RequestCancelled })
  })

  it('gets what is new on the line being written when it has waited', async () => {
    settings = { findings: { delay: 100 } }
    let told = askedAgain()
    await client.connection.sendNotification('workspace/didChangeConfiguration', { settings: null })
    await told
    const uri = 'untitled:Writing'
    client.open(uri, sound)
    await ask(uri)
    const range = { start: { line: 1, character: 22 }, end: { line: 1, character: 25 } }
    changed(client, uri, 2, [{ range, text: '' }])
    told = askedAgain()
    expect(codes((await asked(uri)).items)).not.toContain('job/unit-missing')
    await told
    expect(codes((await asked(uri)).items)).toContain('job/unit-missing')
    const end = { start: range.start, end: range.start }
    changed(client, uri, 3, [{ range: end, text: ' mm' }])
    expect(codes((await asked(uri)).items)).not.toContain('job/unit-missing')
  })
})

describe('an editor that is told', () => {
  const settled = async (client: Client) => {
    for (const uri of ['untitled:None', 'untitled:Nor'])
      await client.connection.sendRequest('textDocument/hover', {
        textDocument: { uri },
        position: { line: 0, character: 0 },
      })
  }

  it('is told once of a burst of eleven changes, and what is asked right behind them sees the last', async () => {
    const { client, write, stop } = await startProcess()
    const uri = 'untitled:Burst'
    const versions: (number | undefined)[] = []
    client.connection.onNotification(PublishDiagnosticsNotification.type, ({ version }) => {
      versions.push(version)
    })
    client.open(uri, 'drive d {\n}\n')
    await settled(client)
    const text = 'drive d {\n  shaft { }\n}\n'
    const burst = Array.from({ length: 11 }, (_, i) =>
      frame({
        jsonrpc: '2.0',
        method: 'textDocument/didChange',
        params: {
          textDocument: { uri, version: i + 2 },
          contentChanges: [{ text: `${text}${'\n'.repeat(i)}` }],
        },
      }),
    )
    write(burst.join(''))
    const hover = await client.connection.sendRequest<{ range: unknown } | null>('textDocument/hover', {
      textDocument: { uri },
      position: { line: 1, character: 3 },
    })
    expect(hover?.range).toMatchObject({ start: { line: 1 } })
    await settled(client)
    expect(versions).toEqual([1, 12])
    await stop()
  })

  it('is told at once where it has no settings, and waits where it gives some with its notices', async () => {
    const { client, stop } = await startProcess()
    const uri = 'untitled:Bare'
    const written = (version: number) => {
      const range = { start: { line: 1, character: 22 }, end: { line: 1, character: 25 } }
      changed(client, uri, version, [{ text: sound }])
      changed(client, uri, version + 1, [{ range, text: '' }])
    }
    client.open(uri, sound)
    await settled(client)
    written(2)
    const at = async (version: number) =>
      codes((await client.published(uri, (params) => params.version === version)).diagnostics)
    expect(await at(3)).toContain('job/unit-missing')
    await client.connection.sendNotification('workspace/didChangeConfiguration', {
      settings: { shaftwright: { findings: { delay: 50 } } },
    })
    changed(client, uri, 4, [{ text: sound }])
    await at(4)
    written(5)
    expect(await at(6)).not.toContain('job/unit-missing')
    const { version } = await client.published(uri, ({ diagnostics }) =>
      codes(diagnostics).includes('job/unit-missing'),
    )
    expect(version).toBe(6)
    await stop()
  })
})
