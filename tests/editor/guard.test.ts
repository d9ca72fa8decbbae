import { describe, expect, it } from 'vitest'
import { ErrorCodes, LSPErrorCodes, ResponseError } from 'vscode-languageserver/node'
import { guards } from '../../server/src/editor/guard.ts'

const throwing = (error: unknown) => () => {
  throw error
}

describe('a guarded handler', () => {
  it('lets a cancellation through, and does not log it', () => {
    const log: string[] = []
    const cancelled = new ResponseError(LSPErrorCodes.RequestCancelled, 'cancelled')
    expect(() =>
      guards(
        (words) => log.push(words),
        () => 'running',
      ).asked(
        'a/request',
        throwing(cancelled),
      )({}),
    ).toThrow(cancelled)
    expect(log).toEqual([])
  })

  it('answers anything else with an error, and logs it', () => {
    const log: string[] = []
    const answer = guards(
      (words) => log.push(words),
      () => 'running',
    ).asked(
      'a/request',
      throwing('a word'),
    )({})
    expect(answer).toMatchObject({ code: ErrorCodes.InternalError })
    expect(log).toEqual(['a/request failed: a word'])
  })

  it('of a notice logs what is thrown later, too', async () => {
    const log: string[] = []
    await guards(
      (words) => log.push(words),
      () => 'running',
    ).told('a/notice', async () => Promise.reject(new Error('late')))({})
    expect(log.join()).toContain('late')
  })
})
