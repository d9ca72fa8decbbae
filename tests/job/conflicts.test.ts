// What a merge leaves: git-merge(1), "How conflicts are presented", and there "diff3" for the version both began from.
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../server/src/areas/index.ts'
import { Checker } from '../../server/src/checks/run.ts'
import { Analysis } from '../../server/src/job/analysis.ts'
import { edit, openDocument, rangeOf, textOf } from '../../server/src/job/document.ts'
import { linkFile } from '../../server/src/job/files.ts'
import { formatText } from '../../server/src/syntax/format.ts'
import { print } from '../../server/src/syntax/tree.ts'

function found(text: string): string[] {
  const analysis = new Analysis()
  analysis.begin()
  const document = openDocument(text)
  const file = linkFile('a.wright', document, () => undefined)
  return new Checker(analysis, allChecks)
    .check(file, { today: '2026-03-10' })
    .map(({ check, at }) => `${check} ${rangeOf(document, at).start.line}`)
}
const conflict = (first: string, second: string, base?: string) =>
  `<<<<<<< HEAD\n${first}${base === undefined ? '' : `||||||| 1a2b3c4\n${base}`}=======\n${second}>>>>>>> feature/other shaft\n`
const shaft = (diameter: number) => `  shaft { diameter: ${diameter} mm }\n`
const drive = (diameter: number, name = 'main') => `drive ${name} {\n${shaft(diameter)}}\n`

/** Each with what it is once the first version is chosen. */
const merges: readonly (readonly [string, string, string])[] = [
  ['of a line in a block', `drive main {\n${conflict(shaft(35), shaft(36))}}\n`, drive(35)],
  ['of a whole block', conflict(drive(35), drive(36)), drive(35)],
  ['with what both began from', conflict(drive(35), drive(36), drive(30)), drive(35)],
  [
    'of a heading: two braces, one closing',
    `${conflict('drive main {\n', 'drive spare {\n')}${shaft(35)}}\n`,
    drive(35),
  ],
  ['of nothing and a block', `${drive(35)}${conflict('', drive(36))}`, drive(35)],
  ['of a block left open and one that is not', conflict(drive(35), `drive main {\n${shaft(36)}`), drive(35)],
  [
    'of whole blocks before another',
    `${conflict(drive(35), drive(36))}${drive(37, 'spare')}`,
    drive(35) + drive(37, 'spare'),
  ],
  ['with braces and quotes that are never closed', `${drive(35)}${conflict('', 'a { "b { # \n')}`, drive(35)],
]

describe('a merge conflict', () => {
  it.each(merges)('%s is one finding, and the first version is read', (_, text, chosen) => {
    const [first, ...others] = found(text).toSorted((a) => (a.startsWith('job/merge-conflict') ? -1 : 1))
    expect(first).toMatch(/^job\/merge-conflict/)
    const checks = (findings: readonly string[]) => findings.map((finding) => finding.split(' ')[0])
    expect(checks(others)).toEqual(checks(found(chosen)))
  })

  it.each(['\n', '\r\n', '\r'])(
    'that is never closed is read to its end, with lines that end in %j',
    (end) => {
      const text = drive(35, 'spare').repeat(50)
      const opened = `<<<<<<< HEAD\n${text}=======\n${text}`.replaceAll('\n', end)
      expect(textOf(openDocument(opened))).toBe(opened)
      expect(found(opened).length).toBeGreaterThan(0)
    },
  )

  it('stands among others, each told once', () => {
    const text = `${conflict(drive(35), drive(36))}\n${conflict(drive(35, 'spare'), '')}seal { free-length: 148 mm }\n`
    expect(found(text).filter((finding) => finding.startsWith('job/merge'))).toEqual([
      'job/merge-conflict 0',
      'job/merge-conflict 10',
    ])
    expect(openDocument(text).sections).toHaveLength(3)
  })

  it('may have line ends of either kind, and stand last without one', () => {
    const text = `${conflict(drive(35), drive(36))}`
    for (const one of [text.replaceAll('\n', '\r\n'), text.trimEnd()])
      expect(found(one).filter((finding) => /merge|duplicate|brace|unreadable/.test(finding))).toEqual([
        'job/merge-conflict 0',
      ])
  })

  it.each(merges)('%s gives its text back, and is not laid out', (_, text) => {
    expect(
      openDocument(text)
        .sections.map(({ parsed }) => print(parsed.tree))
        .join(''),
    ).toBe(text)
    expect(formatText(text)).toContain(text.slice(text.indexOf('<<<<'), text.indexOf('>>>>')))
  })

  it.each(['<<<<<<< HEAD\n', '=======\n', '>>>>>>> other\n'])(
    'of which only %j is left is not passed over',
    (left) => {
      const findings = found(`${left}${drive(35)}${drive(36, 'spare')}`)
      expect(findings.some((finding) => finding.endsWith(' 0'))).toBe(true)
      expect(findings.join()).not.toContain('merge-conflict')
      expect(findings.filter((finding) => finding.includes('fact-missing')).length).toBe(
        found(drive(35) + drive(36, 'spare')).filter((finding) => finding.includes('fact-missing')).length,
      )
    },
  )

  it('comes and goes with any edit as if the text were opened afresh', () => {
    const piece = fc.constantFrom(
      '<<<<<<< a\n',
      '=======\n',
      '||||||| b\n',
      '>>>>>>> c\n',
      drive(35),
      'drive x {\n',
      '}\n',
      '\n',
      '# note\n',
      '  free-length: 3 mm\n',
      '<',
      '=',
      '\r',
    )
    const pieces = fc.array(piece, { maxLength: 12 }).map((all) => all.join(''))
    const change = fc.record({ at: fc.nat(200), length: fc.nat(30), text: fc.oneof(piece, fc.constant('')) })
    fc.assert(
      fc.property(pieces, fc.array(change, { maxLength: 5 }), (start, changes) => {
        let text = start
        let document = openDocument(text)
        for (const { at, length, text: by } of changes) {
          const from = Math.min(at, text.length)
          const to = Math.min(from + length, text.length)
          document = edit(document, from, to, by)
          text = text.slice(0, from) + by + text.slice(to)
        }
        expect(textOf(document)).toBe(text)
        expect(document.sections.map((section) => section.text)).toEqual(
          openDocument(text).sections.map((section) => section.text),
        )
      }),
      { numRuns: 2000 },
    )
  })
})
