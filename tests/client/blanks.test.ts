import { describe, expect, it } from 'vitest'
import { blankBefore, blankFrom, blanksIn, snippetFrom } from '../../client/src/blanks.ts'

const text = 'vessel: "why?" # or so?\ndiameter: ? mm\nwindow: ?..? V\nnote: "a \\" ?"\nend: ?'
const past = (words: string): number => text.indexOf(words) + words.length

describe('blanks of a job file', () => {
  it('are those in values, not in texts and comments', () => {
    const found = blanksIn(text)
    const lines = found.map((at) => text.slice(text.lastIndexOf('\n', at) + 1, at))
    expect(lines).toEqual(['diameter: ', 'window: ', 'window: ?..', 'end: '])
  })

  it('are found forward, from the one under the cursor on', () => {
    expect(blankFrom(text, 0)).toBe(past('diameter: '))
    expect(blankFrom(text, past('diameter: '))).toBe(past('diameter: '))
    expect(blankFrom(text, past('diameter: ?'))).toBe(past('window: '))
  })

  it('are found backward, not the one that is selected', () => {
    expect(blankBefore(text, past('window: '))).toBe(past('diameter: '))
  })

  it('are gone through again from the other end', () => {
    expect(blankFrom(text, text.length)).toBe(past('diameter: '))
    expect(blankBefore(text, past('diameter: '))).toBe(past('end: '))
    expect(blankFrom('diameter: 420 mm', 0)).toBeUndefined()
    expect(blankBefore('diameter: 420 mm', 9)).toBeUndefined()
  })

  it('are the places of a snippet, from one on', () => {
    const braces = `seal { a: ? mm } # $1 \\ ?\n${'b: ?..? V }'}`
    const at = braces.indexOf('?..')
    expect(snippetFrom(braces, { start: 0, at })).toEqual({
      snippet: `seal { a: ? mm \\} # \\$1 \\\\ ?\nb: \${1:?}..\${2:?}`,
      end: braces.lastIndexOf('?') + 1,
    })
  })

  it('do not begin behind a text that is not closed', () => {
    expect(blanksIn('note: "open ?\nend: ?')).toEqual([19])
  })
})
