import { describe, expect, it } from 'vitest'
import {
  code,
  example,
  list,
  md,
  ours,
  paragraphs,
  plain,
  table,
  withoutTicks,
} from '../../server/src/areas/common/markdown.ts'
import { markup } from '../../server/src/editor/hover/markup.ts'
import { plainText } from '../../server/src/editor/hover/plain-text.ts'
import { hoverAt } from './fixture.ts'

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

const feet = table(
  ['foot', 'height', ''],
  [
    [code('fwd-port'), md`up **0.37** mm`, md`a|b`],
    [code('aft'), md`none`, md``],
  ],
)

describe('a table', () => {
  // Unicode Standard Annex 14, line breaking: class GL, to which U+00A0 belongs, is not broken before or behind.
  it('has over a column of names a heading as long as the longest, in one piece', () => {
    const [head = '', align, first] = feet.split('\n')
    expect(head).toBe('| `foot\u00A0\u00A0\u00A0\u00A0` | height |  |')
    expect(align).toBe('|:--|:--|:--|')
    // GitHub Flavored Markdown, section 4.10: a bar in a cell is escaped. The name is as it can be copied.
    expect(first).toBe('| `fwd-port` | up **0.37** mm | a\\|b |')
  })

  it('without names has its headings as they are', () => {
    expect(table(['a', ''], [[md`b`, md`c`]])).toBe('| a |  |\n|:--|:--|\n| b | c |')
  })
})

describe('plain text', () => {
  it.each([
    [ours('**dry-1**: `up` 1 flat'), 'dry-1: up 1 flat'],
    [ours('**`aft` and fwd**'), 'aft and fwd'],
    [ours('*Caution: mind 2 * 3*'), 'Caution: mind 2 * 3'],
    [plain('a*b_c [d](e) `f` <g> 1 & 2'), 'a*b_c [d](e) `f` <g> 1 & 2'],
    [plain('**not bold** | \\'), '**not bold** | \\'],
    [code('a\\*b'), 'a\\*b'],
    [code('one ` tick'), 'one ` tick'],
    [ours('Checked by [a/b](https://docs.example/a/b.md), [c](x)'), 'Checked by a/b, c'],
    [ours('[How](https://docs.example/how.md)'), 'How: https://docs.example/how.md'],
    [ours('**[a/b](x.md)**', 'https://docs.example/'), 'a/b: https://docs.example/x.md'],
    [example('seal { }  # `a` | **b**\n| c |'), '  seal { }  # `a` | **b**\n  | c |'],
    [paragraphs(md`one`, list([md`two`, md`three`])), 'one\n\n- two\n- three'],
    [
      paragraphs(md`before`, feet, md`behind`),
      'before\n\nfoot      height      \nfwd-port  up 0.37 mm  a|b\naft       none\n\nbehind',
    ],
    [
      table(
        ['', ''],
        [
          [code('a'), md`b`],
          [md`cc`, md`d`],
        ],
      ),
      'a   b\ncc  d',
    ],
  ])('of %j', (markdown, wanted) => {
    expect(plainText(markdown)).toBe(wanted.replaceAll(/ +$/gm, ''))
  })

  it('has no signs of Markdown in what a whole reading comes to', () => {
    const { markdown = md`` } =
      hoverAt(`drive main {
  coupling { flange-diameter: 125 mm  gap-variation: max 0.10 mm [maker] }
  bed {
    adjuster: stud-and-nuts
    thread: M16
    foot aft-port { from-coupling: 180 mm  across: 140 mm port }
    foot aft { from-coupling: 180 mm  across: 140 mm starboard }
    foot fwd { from-coupling: 560 mm  across: 140 mm starboard }
  }
  reading dry$0-1 { taken: 2026-03-04  gauge: 0.02 mm  gaps: top 1.2 mm, starboard 1.1 mm, bottom 1 mm, port 1.1 mm }
}
`) ?? {}
    expect(markdown).toContain('| `aft-port` |')
    const text = plainText(markdown)
    expect(text).toMatch(/^aft-port {2}up /m)
    expect(text).toMatch(/^aft {7}up /m)
    expect(text).not.toMatch(/[`|\\]|\*\*|\u00A0/)
  })
})

describe('what an editor is given', () => {
  // LSP 3.17, HoverClientCapabilities.contentFormat: the order is that of preference.
  it.each([
    [undefined, 'plaintext', 'a'],
    [[], 'plaintext', 'a'],
    [['plaintext'], 'plaintext', 'a'],
    [['plaintext', 'markdown'], 'plaintext', 'a'],
    [['markdown', 'plaintext'], 'markdown', '`a`'],
    [['later', 'markdown'], 'markdown', '`a`'],
  ])('that takes %j is %s', (formats, kind, value) => {
    const contentFormat = formats as ('markdown' | 'plaintext')[] | undefined
    const can = { textDocument: { hover: contentFormat ? { contentFormat } : {} } }
    expect(markup(can, 'hover', code('a'))).toEqual({ kind, value })
  })
})
