import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../server/src/areas/index.ts'
import { Checker } from '../../server/src/checks/run.ts'
import { Analysis } from '../../server/src/job/analysis.ts'
import { documentFrom, edit, offsetAt, openDocument, rangeOf, textOf } from '../../server/src/job/document.ts'
import { largestFile, textFrom, utf8Length } from '../../server/src/job/file-text.ts'
import { linkFile } from '../../server/src/job/files.ts'

const tooLarge = { type: 'file-too-large' }

describe('bytes', () => {
  it('are text where they are UTF-8, mark and all', () => {
    for (const text of ['', 'café ⚓ 🚤', '\uFEFFjob'])
      expect(textFrom(new TextEncoder().encode(text))).toBe(text)
  })

  it.each([
    ['no encoding that is known', [0x63, 0xe9], undefined],
    ['UTF-16, low byte first', [0xff, 0xfe, 0x6a, 0], 'UTF-16'],
    ['UTF-16, high byte first', [0xfe, 0xff, 0, 0x6a], 'UTF-16'],
    ['UTF-32, low byte first', [0xff, 0xfe, 0, 0, 0x6a, 0, 0, 0], 'UTF-32'],
    ['UTF-32, high byte first', [0, 0, 0xfe, 0xff, 0, 0, 0, 0x6a], 'UTF-32'],
  ])('may be %s', (_, bytes, encoding) => {
    expect(textFrom(Uint8Array.from(bytes))).toEqual({
      type: 'file-not-utf8',
      ...(encoding !== undefined && { encoding }),
    })
  })

  it('are counted as they would be written', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: fc.oneof(fc.string({ unit: 'binary' }), fc.constantFrom('\uD83D', '\uDEA4')) }),
        (text) => {
          expect(utf8Length(text)).toBe(new TextEncoder().encode(text).length)
        },
      ),
    )
  })

  it('are too many over the limit', () => {
    expect(textFrom(new Uint8Array(largestFile + 1))).toEqual(tooLarge)
    expect(textFrom(new Uint8Array(largestFile))).toHaveLength(largestFile)
  })
})

describe('a text over the limit', () => {
  const findings = (document: ReturnType<typeof openDocument>) => {
    const analysis = new Analysis()
    analysis.begin()
    const found = new Checker(analysis, allChecks).check(
      linkFile('a.wright', document, () => undefined),
      { today: '2026-03-10' },
    )
    return found.map(({ at, check }) => ({ check, ...rangeOf(document, at) }))
  }
  const start = { line: 0, character: 0 }
  const only = [{ check: 'job/file-too-large', start, end: start }]

  it.each([
    ['lines', '\n'.repeat(largestFile + 1)],
    ['braces', 'drive {'.repeat(largestFile / 5)],
    ['fewer characters than bytes', '# 船船船船\n'.repeat(largestFile / 14)],
  ])('of %s has one finding, and is kept', (_, text) => {
    const document = openDocument(text)
    expect(findings(document)).toEqual(only)
    expect(textOf(document) === text).toBe(true)
    expect(document.sections).toHaveLength(1)
  })

  it('is read again as soon as it is short enough, and the other way round', () => {
    const filling = `# ${'é'.repeat(1000)}\r\n`
    const bytes = utf8Length(filling)
    const most = filling.repeat(Math.floor(largestFile / bytes))
    let document = openDocument(most)
    expect(document.refusal).toBeUndefined()
    document = edit(document, most.length, most.length, `${filling}nonsense\n`)
    expect(findings(document)).toEqual(only)
    // A position is found without a list of all lines.
    const line = most.length / filling.length + 1
    expect(offsetAt(document, { line, character: 3 })).toBe(most.length + filling.length + 3)
    expect(offsetAt(document, { line, character: 300 })).toBe(
      most.length + filling.length + 'nonsense'.length,
    )
    expect(offsetAt(document, { line: line + 9, character: 0 })).toBe(document.length)
    document = edit(document, 0, most.length, '')
    expect(findings(document).map(({ check, start: { line: at } }) => [check, at])).toEqual(
      findings(openDocument(`${filling}nonsense\n`)).map(({ check, start: { line: at } }) => [check, at]),
    )
    expect(textOf(document)).toBe(`${filling}nonsense\n`)
  })

  it('is not used', () => {
    const uses = openDocument('use "b.wright"\nuse "b.wright"\n')
    const file = linkFile('a.wright', uses, () => documentFrom(tooLarge as never))
    expect(file.used).toEqual([])
    expect(file.problems.map(({ problem }) => problem)).toEqual([
      { type: 'file-too-large', path: 'b.wright' },
      { type: 'file-too-large', path: 'b.wright' },
    ])
  })
})
