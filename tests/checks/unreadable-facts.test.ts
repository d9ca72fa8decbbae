import { describe, expect, it } from 'vitest'
import { allChecks } from '../../server/src/areas/index.ts'
import { Checker } from '../../server/src/checks/run.ts'
import { Analysis } from '../../server/src/job/analysis.ts'
import { openDocument } from '../../server/src/job/document.ts'
import { linkFile } from '../../server/src/job/files.ts'
import { findingsOf } from './marks.ts'

const idsOf = (text: string): readonly string[] => {
  const analysis = new Analysis()
  analysis.begin()
  const file = linkFile('a.wright', openDocument(text), () => undefined)
  return new Checker(analysis, allChecks).check(file, { today: '2026-03-04' }).map(({ check }) => check)
}

// docs/language.md: a fact that is written but cannot be read is a finding of its own, and is not missing.
describe('a fact that cannot be read is not reported as missing', () => {
  const job = 'job "x" { vessel: "v"  revision: "A"  status: for-review }\n'
  const missing = (text: string): readonly string[] => {
    const found = findingsOf(job + text, allChecks).findings.filter(
      ({ check }) => check === 'job/fact-missing',
    )
    return found.flatMap(({ limit }) => limit?.split(', ') ?? [])
  }

  it('compression of a seal', () => {
    const silent = 'drive main {\n  seal { free-length: 148 mm }\n}\n'
    expect(missing(silent)).toContain('compression')
    const wrong = silent.replace('free-length: 148 mm', 'compression: 26 kg')
    expect(idsOf(wrong)).toContain('job/unit-wrong-kind')
    expect(missing(wrong)).not.toContain('compression')
  })

  it('compression of a seal from a parts library', () => {
    const library = (compression: string) =>
      `seal shaft-seal {\n  ${compression}\n}\ndrive main {\n  seal {\n    like: shaft-seal\n  }\n}\n`
    expect(missing(library('free-length: 148 mm'))).toContain('compression')
    expect(missing(library('compression: ?'))).toContain('compression')
    expect(missing(library('compression: 26 mm +3/-2 mm'))).not.toContain('compression')
    expect(missing(library('compression: 26 kg'))).not.toContain('compression')
  })

  it('what a fuse protects', () => {
    const job = (fuse: string) => `battery house { nominal: 96 V }
drive main {
  controller { }
  cable feed {
    from: house
    to: controller
    conductor: 95 mm2
    length: 2 m
    insulation: 105 degC
  }
  ${fuse}
}
`
    expect(idsOf(job(''))).toContain('protection/none')
    const fuse = 'protection main-fuse {\n    rating: 315 A\n    in: 3 mm\n  }'
    expect(idsOf(job(fuse))).not.toContain('protection/none')
  })
})

// DEVELOPERS.md: a fault in a check costs that check's findings; none is to have one, whatever cannot be read.
describe('no check fails where one fact cannot be read, or is misspelt', () => {
  it.each(allChecks.map((check) => [check.id, check.fires] as const))('in the example of %s', (_id, text) => {
    for (const { index, 0: written } of text.matchAll(/[a-z][a-z-]+:/g)) {
      const before = text.slice(0, index)
      const after = text.slice(index + written.length)
      for (const damaged of [`${written} 3 kg, ! `, `${written.slice(0, -2)}x:`])
        expect(() => findingsOf(before + damaged + after, allChecks)).not.toThrow()
    }
  })
})
