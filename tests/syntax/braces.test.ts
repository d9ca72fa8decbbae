// A missing brace is one finding, at the place where it is missing: the indentation shows where. The language's own rule.
import { readdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../server/src/areas/index.ts'
import { edit, openDocument } from '../../server/src/job/document.ts'
import { formatText } from '../../server/src/syntax/format.ts'
import { cutPieces } from '../../server/src/syntax/sections.ts'
import { lex } from '../../server/src/syntax/tokens.ts'
import { findingsOf, placed } from '../checks/marks.ts'
import { fixed } from '../checks/offers.ts'
import { texts } from './texts.ts'

const examples = resolve(import.meta.dirname, '../../docs/examples')
const read = (demo: string) => readFileSync(join(examples, demo), 'utf8')
const others = { 'parts/drivetrain.wright': read('parts/drivetrain.wright') }
const found = (text: string) => placed(findingsOf(text, allChecks, { others }))

/** Findings of a damaged text that the intact one has not. */
function added(text: string, intact: readonly string[]) {
  const left = [...intact]
  return found(text).filter(({ check }) => {
    const at = left.indexOf(check)
    if (at >= 0) left.splice(at, 1)
    return at < 0
  })
}

describe.each([
  'inch-day-boat.wright',
  'survey-launch-as-built.wright',
  'twin-screw-ferry.wright',
  'parts/drivetrain.wright',
])('%s with one brace gone', { timeout: 120_000 }, (demo) => {
  const text = read(demo)
  const lines = text.split('\n')
  const intact = found(text).map(({ check }) => check)
  const braces = [...text.matchAll(/[{}]/g)].filter(
    ({ index }) => !text.slice(text.lastIndexOf('\n', index) + 1, index).includes('#'),
  )

  it.each(['{', '}'])('has one finding more for %s, and an as-built job that it has an error', (brace) => {
    for (const { index } of braces.filter(([sign]) => sign === brace)) {
      const line = text.slice(0, index).split('\n').length - 1
      // A brace on a line of its own is missing behind the line before it.
      const at = brace === '}' && lines[line]?.trim() === '}' ? line - 1 : line
      const checks = added(text.slice(0, index) + text.slice(index + 1), intact)
      const own = checks.filter(({ check }) => check !== 'job/as-built-with-errors')
      const check = brace === '{' ? 'job/block-not-opened' : 'job/block-not-closed'
      expect(own.map((one) => [one.check, one.line])).toEqual([[check, at]])
      expect(checks.length).toBeLessThanOrEqual(2)
    }
  })

  it('has one finding more where a } is there twice', () => {
    for (const { index } of braces.filter(([sign]) => sign === '}')) {
      const damaged = `${text.slice(0, index)}}${text.slice(index)}`
      const own = added(damaged, intact).filter(({ check }) => check !== 'job/as-built-with-errors')
      expect(own.map(({ check }) => check)).toEqual(['job/closing-without-block'])
    }
  })
})

const drive = `drive main {
  seal { free-length: 148 mm  compression: 26 mm }
  bed {
    adjuster: shims
    foot aft { from-coupling: 180 mm  across: 0 mm }
  }
  shaft { length: 2 m }
}
`
const left = (text: string) => found(text).map(({ check }) => check)

describe('a brace that is missing or too many', () => {
  it.each([
    ['an inner block', '  }\n  shaft', '  shaft', 'job/block-not-closed', 'Close the bed'],
    ['a block of one line', '0 mm }', '0 mm', 'job/block-not-closed', 'Close the foot'],
    ['the drive', 'm }\n}\n', 'm }\n', 'job/block-not-closed', 'Close the drive'],
    ['the start of an inner block', 'bed {', 'bed', 'job/block-not-opened', 'Add the opening brace'],
    ['the start of the drive', 'main {', 'main', 'job/block-not-opened', 'Add the opening brace'],
    [
      'the start of a block of one line',
      'foot aft {',
      'foot aft',
      'job/block-not-opened',
      'Add the opening brace',
    ],
    ['one twice', '  }\n  shaft', '  }\n  }\n  shaft', 'job/closing-without-block', 'Delete the brace'],
    ['one twice on a line', '0 mm }', '0 mm } }', 'job/closing-without-block', 'Delete the brace'],
  ])('%s: its fix gives the job back', (_title, intact, damaged, check, title) => {
    const text = `${drive.replace(intact, damaged)}battery house { nominal: 96 V }\n`
    const whole = `${drive}battery house { nominal: 96 V }\n`
    expect(left(text)).toEqual(
      [...left(whole), check].sort((a, b) => left(text).indexOf(a) - left(text).indexOf(b)),
    )
    expect(fixed(text, check, title)).toBe(whole)
  })

  it('leaves the layout as it is until it is mended', () => {
    const text = drive.replace('  }\n  shaft', '  shaft')
    expect(formatText(text)).toBe(text)
  })

  it('does not move what stands at the margin in a drive that is not closed', () => {
    const text = 'drive d {\n  gear { ratio: 2 }\nreading dry-1 {\n  taken: 2026-03-04\n  gauge: 0.02 mm\n}\n'
    expect(left(text)).toContain('job/block-not-closed')
    expect(left(text)).not.toContain('job/block-misplaced')
  })
})

describe('braces that are even', () => {
  const demos = readdirSync(examples, { recursive: true, encoding: 'utf8' }).filter((file) =>
    file.endsWith('.wright'),
  )
  const margins = fc.infiniteStream(fc.constantFrom('', '', '  ', '    ', '\t', '       '))
  const problemsOf = (text: string) =>
    openDocument(text).sections.flatMap(({ parsed }) => parsed.problems.map(({ type }) => type))

  it.each(demos)('have no finding, however each line of %s is indented', (demo) => {
    const lines = read(demo).split('\n')
    fc.assert(
      fc.property(margins, (stream) => {
        const text = lines.map((line) => (stream.next().value ?? '') + line.trimStart()).join('\n')
        expect(problemsOf(text)).toEqual([])
      }),
      { numRuns: 60 },
    )
  })

  it('have the findings of the job laid out, whatever stands at the margin', () => {
    const laid = `drive main {
  gear { ratio: 2 }
  bed main {
    adjuster: shims
    foot aft { from-coupling: 180 mm  across: 0 mm }
  }
  shaft { length: 2 m }
  moter aft {
    power: 15 kW
  }
}
battery house { nominal: 96 V }
`
    const ids = left(laid)
    fc.assert(
      fc.property(margins, (stream) => {
        const lines = laid.split('\n').map((line) => (stream.next().value ?? '') + line.trimStart())
        expect(left(lines.join('\n'))).toEqual(ids)
      }),
      { numRuns: 200 },
    )
  })

  it('in one drive show what another lacks', () => {
    const mixed = 'drive a {\n  gear { ratio: 2 }\nbed main {\n  adjuster: shims\n}\n}\n'
    const half = 'drive b {\n  gear { ratio: 2 }\n  shaft {\n    length: 2 m\n}\n'
    expect(problemsOf(`${mixed}${half}drive c { gear { ratio: 2 } }\n`)).toEqual(['block-not-closed'])
    expect(problemsOf(`${half}${mixed}drive c { gear { ratio: 2 } }\n`)).toEqual(['block-not-closed'])
  })

  it('are found when the brace that was missing is typed, however far below', () => {
    const text = 'drive a {\n  gear { ratio: 2 }\nbed main {\n  adjuster: shims\n}\n\ndrive b { }\n'
    expect(problemsOf(text)).toEqual(['block-not-closed'])
    const at = text.indexOf('\ndrive b')
    const mended = edit(openDocument(text), at, at, '}\n')
    expect(mended.sections.map((section) => section.text.split(' {', 1)[0]?.trim())).toEqual([
      'drive a',
      'drive b',
    ])
    expect(mended.sections.flatMap(({ parsed }) => parsed.problems)).toEqual([])
  })

  it('are counted when a text is cut as they are when it is read', () => {
    fc.assert(
      fc.property(texts, (text) => {
        const braces = lex(text)
          .tokens.map(({ image }) => image)
          .filter((image) => image === '{' || image === '}')
        const rise = cutPieces(text).reduce((sum, piece) => sum + piece.rise, 0)
        expect(rise).toBe(braces.filter((brace) => brace === '{').length * 2 - braces.length)
      }),
      { numRuns: 2000, examples: [['{"{'], ['"\\"{"}'], ['a: "{ b: "c}'], ['# {\n"\\{'], ['\\"{"\u2028}']] },
    )
  })
})
