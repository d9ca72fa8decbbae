import { describe, expect, it } from 'vitest'
import type { Diagnostic } from 'vscode-languageserver/node'
import { lineOf, shownNow } from '../../server/src/editor/diagnostics/held-back.ts'

const at = (line: number, code: string, message = code): Diagnostic => ({
  range: { start: { line, character: 0 }, end: { line: line + 1, character: 0 } },
  code,
  message,
})

describe('while a line is being written', () => {
  it('what is new on it waits, what is new elsewhere does not', () =>
    expect(shownNow([], [at(1, 'a'), at(2, 'b'), at(3, 'c')], 2)).toEqual([at(1, 'a'), at(3, 'c')]))

  it('what was shown on it stays, in its words of now', () =>
    expect(shownNow([at(2, 'b', '3 mm')], [at(2, 'b', '35 mm')], 2)).toEqual([at(2, 'b', '35 mm')]))

  it('what is put right is gone', () =>
    expect(shownNow([at(1, 'a'), at(2, 'b')], [at(1, 'a')], 2)).toEqual([at(1, 'a')]))

  it('the same fault shown on another line makes it no less new', () =>
    expect(shownNow([at(1, 'b')], [at(1, 'b'), at(2, 'b')], 2)).toEqual([at(1, 'b')]))
})

describe('the line being written', () => {
  const range = { start: { line: 4, character: 2 }, end: { line: 9, character: 0 } }
  it.each([
    ['m', 4],
    ['', 4],
    ['a\nb', 5],
    ['\r\n\r\n', 6],
  ])('after putting in %j on line 4 is line %i', (text, line) => expect(lineOf({ range, text })).toBe(line))

  it('is none after a change of everything, and after no change', () => {
    expect(lineOf({ text: 'x' })).toBeUndefined()
    expect(lineOf(undefined)).toBeUndefined()
  })
})
