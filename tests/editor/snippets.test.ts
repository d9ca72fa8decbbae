import { describe, expect, it } from 'vitest'
import { allChecks } from '../../server/src/checks/index.ts'
import { Checker } from '../../server/src/checks/run.ts'
import { completion } from '../../server/src/editor/completion.ts'
import type { Offer } from '../../server/src/editor/completion-offer.ts'
import { plainOf, snippetOf } from '../../server/src/editor/template.ts'
import { Analysis } from '../../server/src/job/analysis.ts'
import { locate, openDocument } from '../../server/src/job/document.ts'
import { linkFile } from '../../server/src/job/files.ts'

const today = '2026-03-09'

function read(text: string) {
  const analysis = new Analysis()
  analysis.begin()
  return { analysis, file: linkFile('boat.wright', openDocument(text), () => undefined) }
}

/** Ids of the checks that find an error. */
function errorsIn(text: string): readonly string[] {
  const { analysis, file } = read(text)
  const findings = new Checker(analysis, allChecks).check(file, { today })
  return [...new Set(findings.filter(({ severity }) => severity === 'error').map(({ check }) => check))]
}

function offersAt(marked: string): readonly Offer[] {
  const { analysis, file } = read(marked.replace('$0', ''))
  const lines = marked.slice(0, marked.indexOf('$0')).split('\n')
  const at = locate(file.document, { line: lines.length - 1, character: lines.at(-1)?.length ?? 0 })
  const found =
    at && completion({ analysis, file, today, paths: [], findings: () => [] }, at.section, at.offset)
  return found?.offers ?? []
}

const job = `job "A" { vessel: "A" }
battery house { nominal: 96 V  window: 84..108 V }
`
const bare = `${job}drive main {
  $0
}
`
const full = `${job}drive main {
  propeller { diameter: 420 mm }
  shaft { diameter: 35 mm }
  coupling { flange-diameter: 125 mm }
  motor main { power: 5 kW  speed: 1500 rpm  voltage: 58 V  power-factor: 0.9  efficiency: 92 %  terminals: U, V, W }
  controller { input: 72..120 V  terminals: L1, L2, L3 }
  cable feed { from: house  to: controller  conductor: 70 mm2  length: 1 m  insulation: 105 degC }
  bed {
    adjuster: stud-and-nuts
    thread: M16
    foot aft { from-coupling: 180 mm  across: 140 mm port }
    foot fwd { from-coupling: 560 mm  across: 140 mm starboard }
    foot mid { from-coupling: 560 mm  across: 140 mm port }
  }
  reading dry-1 { taken: 2026-03-04  gauge: 0.02 mm  gaps: top 1 mm, starboard 1 mm, bottom 1 mm, port 1 mm }
  $0
}
`
const end = `${full.replace('$0', '')}$0\n`

/** Errors that a block has to have until it is filled in, or until what it is about is there. */
const must: Readonly<Record<string, readonly string[]>> = {
  // Nothing to start from, to end at or to protect.
  cable: ['job/unresolved'],
  protection: ['job/unresolved'],
  // There are two then, and the cables say no longer which is meant.
  controller: ['job/unresolved'],
  // No reading to come after.
  move: ['alignment/move-after-unknown-reading'],
  // Figures that nobody has read must not pass.
  reading: ['job/unresolved'],
  'shaft-log': ['job/unresolved'],
  'whole drive': ['job/unresolved'],
  'whole job': ['job/unresolved'],
}

const blocks = (marked: string) =>
  offersAt(marked)
    .filter(({ kind }) => kind === 'block' || kind === 'snippet')
    .filter(({ label }) => label !== 'use')
    .map((offer) => ({ label: offer.label, offer, marked }))

describe('what is inserted', () => {
  it.each([...blocks(bare), ...blocks(full), ...blocks(end), ...blocks('$0')])(
    'checks without an error as it is: $label',
    ({ label, offer, marked }) => {
      const before = errorsIn(marked.replace('$0', ''))
      const after = errorsIn(marked.replace('$0', plainOf(offer.insert)))
      const own = after.filter((check) => !before.includes(check))
      expect(own.filter((check) => !must[label]?.includes(check))).toEqual([])
    },
  )
})

describe('a snippet', () => {
  const at = (marked: string, label: string) =>
    offersAt(marked).find((offer) => offer.label === label)?.insert ?? []

  it('has its places numbered, choices first, in the syntax of LSP 3.17', () => {
    expect(snippetOf(['a ', { value: 'b' }, ' ', { value: 'x', choices: ['x', 'y'] }])).toBe(
      `a \${1:b} \${2|x,y|}`,
    )
  })

  it('escapes what the syntax gives a meaning', () => {
    expect(snippetOf(['$1 {} \\', { value: '$}' }, { value: 'a', choices: ['a,b', 'c|d'] }])).toBe(
      `\\$1 {} \\\\\${1:\\$\\}}\${2|a\\,b,c\\|d|}`,
    )
  })

  it('gives the next reading its name and today', () => {
    expect(plainOf(at(full, 'reading'))).toMatch(/^reading dry-2 \{\n {2}taken: {3}2026-03-09\n/)
  })

  it('gives a move the last reading and every foot', () => {
    expect(plainOf(at(full, 'move'))).toBe(
      'move after dry-1 {\n  done: 2026-03-09\n  aft:  none\n  fwd:  none\n  mid:  none\n}',
    )
  })

  it('takes the names that are in scope', () => {
    expect(snippetOf(at(full, 'cable'))).toContain(`from:       \${2|controller,main,house|}`)
    expect(plainOf(at(full, 'protection'))).toContain('protects: feed')
  })

  it('pairs the terminals that the drive has', () => {
    expect(plainOf(at(full, 'phase-map'))).toBe('phase-map { L1 to U, L2 to V, L3 to W }')
  })

  it('ends a concession when it is written: the day is still to be said', () => {
    expect(plainOf(at(end, 'concession'))).toContain('until:      2026-03-09')
  })

  it('has every part of a drive', () => {
    const { file, analysis } = read(plainOf(at('$0', 'whole drive')))
    const kinds = analysis.blocks(file)[0]?.children.map(({ kind }) => kind)
    expect(kinds).toEqual(
      expect.arrayContaining([
        'propeller',
        'shaft',
        'seal',
        'coupling',
        'motor',
        'bed',
        'controller',
        'phase-map',
      ]),
    )
  })
})
