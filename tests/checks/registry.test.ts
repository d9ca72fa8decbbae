import fs from 'node:fs'
import path from 'node:path'
import { describe, expect, it } from 'vitest'
import { allChecks, areas } from '../../server/src/areas/index.ts'
import {
  type Check,
  check,
  isProblemCheck,
  type Problem,
  theLanguage,
} from '../../server/src/checks/check.ts'
import { checkFiles } from '../../server/tools/generate/checks.ts'
import { findingsOf, marksIn, placed } from './marks.ts'

const root = path.resolve(import.meta.dirname, '../..')
const files = checkFiles(root)

/** Every type of problem the floors below can report: the compiler keeps this list whole. */
const problemTypes: Record<Problem['type'], true> = {
  'block-not-closed': true,
  'block-not-opened': true,
  'closing-without-block': true,
  'bracket-not-closed': true,
  'text-not-closed': true,
  'curly-quotes': true,
  unreadable: true,
  'value-missing': true,
  'too-deep': true,
  'sign-touches': true,
  dash: true,
  'minus-touches': true,
  'ratio-unclear': true,
  'merge-conflict': true,
  'unknown-unit': true,
  'no-unit': true,
  'wrong-kind': true,
  'not-a-number': true,
  'not-a-gauge': true,
  'cannot-combine': true,
  'divided-by-zero': true,
  'not-this-value': true,
  'outside-allowed': true,
  unresolved: true,
  'refers-to-itself': true,
  'no-such-date': true,
  'unknown-fit': true,
  'unknown-fact': true,
  'unknown-block': true,
  'misplaced-block': true,
  duplicate: true,
  heading: true,
  'line-not-understood': true,
  'record-like': true,
  'decimal-comma': true,
  'thousands-separator': true,
  'comma-unclear': true,
  'point-unclear': true,
  'value-quoted': true,
  'file-too-large': true,
  'file-not-utf8': true,
  'file-unreadable': true,
  'use-outside': true,
  'use-missing': true,
  'source-unread': true,
  'chain-too-long': true,
  'drive-too-large': true,
  'list-too-long': true,
  'block-added': true,
  'not-taken': true,
  'use-loop': true,
}

describe.each(allChecks.map((c) => [c.id, c] as const))('%s', (id, c) => {
  /** File checks look at the findings of others; all others are run alone. */
  const checks = 'file' in c ? allChecks : [c]
  const own = (text: string) => placed(findingsOf(text, checks)).filter((found) => found.check === id)

  it('fires where its example points', () => {
    const marks = marksIn(c.fires)
    expect(marks.length).toBeGreaterThan(0)
    const found = own(c.fires)
    expect(found.map(({ line, from }) => ({ line, from }))).toEqual(
      marks.map(({ line, from }) => ({ line, from })),
    )
    marks.forEach((mark, i) => {
      if (mark.to !== undefined) expect(found[i]).toMatchObject({ to: mark.to, endLine: mark.line })
      expect(`${found[i]?.said} ${found[i]?.todo}`).toContain(mark.words)
    })
  })

  it('is quiet on its quiet example', () => {
    expect(own(c.quiet)).toEqual([])
  })

  it('names the fault, why it matters, its source and what to do', () => {
    expect(c.title).not.toBe('')
    expect(c.why.length).toBeGreaterThan(20)
    expect(c.source.text).not.toBe('')
    for (const found of own(c.fires)) {
      expect(found.message).toMatch(/[.:]$/)
      expect(found.todo).toMatch(/[.?]$/)
    }
  })

  it('has its file and its page', () => {
    expect(files.get(id)).toBeDefined()
    expect(fs.existsSync(path.join(root, `docs/checks/${id}.md`))).toBe(true)
  })
})

describe('the registry', () => {
  it('has each id once', () => {
    expect(new Set(allChecks.map((c) => c.id)).size).toBe(allChecks.length)
  })

  it('holds every check of every area', () => {
    expect(allChecks.map(({ id }) => id)).toEqual([...files.keys()])
    const folders = fs
      .readdirSync(path.join(root, 'server/src/areas'))
      .filter((name) => fs.existsSync(path.join(root, 'server/src/areas', name, 'index.ts')))
    expect(areas.map(({ name }) => name).sort()).toEqual(folders)
  })

  it('has exactly one check for each type of problem', () => {
    const words = allChecks.filter(isProblemCheck).map((c) => c.problem)
    expect([...words].sort()).toEqual(Object.keys(problemTypes).sort())
  })

  it('loses only the findings of a check that fails', () => {
    const broken: Check = check({
      id: 'test/broken',
      severity: 'error',
      title: 'x',
      why: 'x',
      source: theLanguage,
      on: 'seal',
      fires: '',
      quiet: '',
      run: () => {
        throw new Error('a bug')
      },
    })
    const text = 'drive main { seal { free-length: 148 } }'
    expect(() => findingsOf(text, [broken, ...allChecks])).toThrow('test/broken failed')
    const faults: string[] = []
    expect(faultTolerant(text, [broken, ...allChecks], faults)).toContain('job/unit-missing')
    expect(faults).toEqual(['test/broken'])
  })
})

function faultTolerant(text: string, checks: readonly Check[], faults: string[]): readonly string[] {
  const { findings } = findingsOf(text, checks, { onFault: (id) => faults.push(id) })
  return findings.map((finding) => finding.check)
}
