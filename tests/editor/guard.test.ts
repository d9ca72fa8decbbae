import { describe, expect, it } from 'vitest'
import { CancellationToken, ErrorCodes, LSPErrorCodes, ResponseError } from 'vscode-languageserver/node'
import { guards } from '../../server/src/editor/transport/guard.ts'

const throwing = (error: unknown) => () => {
  throw error
}

describe('a guarded handler', () => {
  it('lets a cancellation through, and does not log it', async () => {
    const log: string[] = []
    const cancelled = new ResponseError(LSPErrorCodes.RequestCancelled, 'cancelled')
    const asked = guards(
      (words) => log.push(words),
      () => 'running',
    ).request('a/request', throwing(cancelled))
    await expect(asked({}, CancellationToken.None)).rejects.toBe(cancelled)
    expect(log).toEqual([])
  })

  it('is not called for what is cancelled, and what is cancelled meanwhile is not answered', async () => {
    let called = 0
    let now = true
    const token = {
      get isCancellationRequested() {
        return now
      },
      onCancellationRequested: CancellationToken.None.onCancellationRequested,
    }
    const asked = guards(
      () => {},
      () => 'running',
    ).request('a/request', async () => {
      called += 1
      now = true
      return 'an answer'
    })
    const refused = { code: LSPErrorCodes.RequestCancelled }
    expect(await asked({}, token)).toMatchObject(refused)
    expect(called).toBe(0)
    now = false
    expect(await asked({}, token)).toMatchObject(refused)
    expect(called).toBe(1)
  })

  it.each([
    ['thrown', throwing('a word')],
    ['rejected', async () => Promise.reject('a word')],
  ])('answers anything else that is %s with an error, and logs it', async (_, handle) => {
    const log: string[] = []
    const answer = await guards(
      (words) => log.push(words),
      () => 'running',
    ).request('a/request', handle)({}, CancellationToken.None)
    expect(answer).toMatchObject({ code: ErrorCodes.InternalError })
    expect(log).toEqual(['a/request failed: a word'])
  })

  it('of a notice logs what is thrown later, too', async () => {
    const log: string[] = []
    await guards(
      (words) => log.push(words),
      () => 'running',
    ).notification('a/notice', async () => Promise.reject(new Error('late')))({})
    expect(log.join()).toContain('late')
  })
})
