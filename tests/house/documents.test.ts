import { spawnSync } from 'node:child_process'
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join, resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { allChecks } from '../../server/src/areas/index.ts'
import { formatText } from '../../server/src/syntax/format.ts'
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

/** The fenced blocks of docs/language.md in order, each with what the first line below it says. */
const fences = [
  ...read('docs/language.md').matchAll(/^```(wright|plan) ?(.*)\n([\s\S]*?)^```(?=\n+(.*))/gm),
].map(([, language = '', where = '', code = '', below = '']) => ({ language, where, code, below }))

interface Sample {
  readonly title: string
  readonly job: string
  readonly others: Readonly<Record<string, string>>
  readonly says: string
  readonly plan: boolean
}

/** Behind `wright`: nothing for a new job, `below` for its next blocks, `inside drive` for what goes before the drive's last brace, and
 * `file PATH` for a file that later jobs use. A `plan` shows lines of what is worked out for the job so far. */
function samplesOf(): readonly Sample[] {
  let job = ''
  const others: Record<string, string> = {}
  return fences.map(({ language, where, code, below }) => {
    const path = /^file (.+)/.exec(where)?.[1]
    if (path) others[path] = code
    else if (where === 'below') job += `\n${code}`
    else if (where === 'inside drive') job = job.replace(/(^drive [\s\S]*?)^}/m, `$1\n${code}}`)
    else if (language === 'wright') job = code
    const plan = language === 'plan'
    const title = `${language} ${where}: ${code.trim().split('\n')[0] ?? ''}`
    return { title, job: path ? code : job, others: { ...others }, says: plan ? code : below, plan }
  })
}

const samples = samplesOf()

function planOf(job: string): string {
  const folder = mkdtempSync(join(tmpdir(), 'shaftwright-'))
  try {
    writeFileSync(join(folder, 'a.wright'), job)
    const main = join(root, 'server/src/cli/main.ts')
    return spawnSync(process.execPath, [main, 'plan', 'a.wright'], { cwd: folder, encoding: 'utf8' }).stdout
  } finally {
    rmSync(folder, { recursive: true })
  }
}

describe('the jobs in docs/language.md', () => {
  it.each(samples.filter(({ plan }) => !plan))('$title: check finds what is said below', (sample) => {
    expect(sample.says).toMatch(/^Check finds( nothing\.|: )/)
    const said = [...sample.says.matchAll(/(\w+) `([a-z-]+\/[a-z-]+)`/g)].map(([, sev, id]) => `${sev} ${id}`)
    const { findings } = findingsOf(sample.job, allChecks, { others: sample.others })
    expect(findings.map(({ severity, check }) => `${severity} ${check}`).sort()).toEqual(said.sort())
  })

  it.each(samples)('$title: is laid out as Format Document lays it out', ({ job }) => {
    expect(formatText(job)).toBe(job)
  })

  it.each(samples.filter(({ plan }) => plan))('$title: the plan has these lines', ({ job, says }) => {
    const lines = planOf(job).split('\n')
    for (const line of says.split('\n')) if (line !== '…' && line !== '') expect(lines).toContain(line)
  })

  it('leave no block out, and show a plan and a file that is used', () => {
    expect(samples.filter(({ plan }) => plan)).not.toEqual([])
    expect(samples.filter(({ others }) => Object.keys(others).length > 0)).not.toEqual([])
    expect(samples.length).toBeGreaterThan(10)
    expect(samples.length * 2).toBe([...read('docs/language.md').matchAll(/^ *```/gm)].length)
  })
})

describe('the demo', () => {
  it('ends by saying what to read and what to run next', () => {
    const last = read('server/tools/demo.ts').trimEnd().split('console.log').at(-1) ?? ''
    const document = /docs\/\S+\.md/.exec(last)?.[0] ?? ''
    expect(document).toBe('docs/language.md')
    expect(existsSync(join(root, document))).toBe(true)
    expect(last).toContain('node dist/cli.js check YOUR.wright')
  })
})
