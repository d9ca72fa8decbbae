import { describe, expect, it } from 'vitest'
import { code, withoutTicks } from '../../server/src/editor/markdown.ts'

// CommonMark 0.31, section 6.1: a span of code stands between runs of backticks of one length.
describe('a text without the signs of code', () => {
  it.each([
    ['Add it, such as `across: 140 mm port`.', 'Add it, such as across: 140 mm port.'],
    ['`a` and `b`', 'a and b'],
    [code('one ` tick'), 'one ` tick'],
    ['` stands here', '` stands here'],
    ['`a\nb`', '`a\nb`'],
    ['none', 'none'],
  ])('%j', (text, plain) => {
    expect(withoutTicks(text)).toBe(plain)
  })
})
