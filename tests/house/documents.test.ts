import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { dirname, join, resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../server/src/checks/index.ts'
import { findingsOf } from '../checks/marks.ts'

const root = resolve(import.meta.dirname, '../..')
const read = (file: string): string => readFileSync(join(root, file), 'utf8')
const documents = [
  'README.md',
  'DEVELOPERS.md',
  ...readdirSync(join(root, 'docs'))
    .filter((f) => f.endsWith('.md'))
    .map((f) => `docs/${f}`),
]

describe.each(documents)('%s', (file) => {
  const text = read(file)

  it('links only to what is there', () => {
    const targets = [...text.matchAll(/\]\((?!https?:)([^)#]+)/g)].map((m) => m[1] ?? '')
    for (const target of targets) expect(existsSync(join(root, dirname(file), target)), target).toBe(true)
  })

  it('names only commands that there are', () => {
    const { scripts } = JSON.parse(read('package.json')) as { scripts: Record<string, string> }
    for (const [, script] of text.matchAll(/npm run ([\w:-]+)/g))
      expect(scripts, script).toHaveProperty(script ?? '')
  })

  it('names only source files that there are', () => {
    const paths = [...text.matchAll(/`((?:server|client|tests|docs|syntaxes)\/[\w./-]+)`/g)].map(
      (m) => m[1] ?? '',
    )
    for (const path of paths) expect(existsSync(join(root, path)), path).toBe(true)
  })
})

describe('the jobs in docs/language.md', () => {
  const jobs = [...read('docs/language.md').matchAll(/```wright\n([\s\S]*?)```/g)].map((m) => m[1] ?? '')

  it('can all be read', () => {
    expect(jobs.length).toBeGreaterThan(2)
    for (const job of jobs) {
      const { findings } = findingsOf(job, allChecks)
      expect(
        findings.filter(({ check }) => check.startsWith('job/') && check !== 'job/concession-unused'),
      ).toEqual([])
    }
  })
})
