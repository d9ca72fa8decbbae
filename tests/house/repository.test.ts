import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { describe, expect, it } from 'vitest'

const root = resolve(import.meta.dirname, '../..')
const read = (file: string): string => readFileSync(join(root, file), 'utf8')

const topLevel = [
  ...['DEVELOPERS.md', 'LICENSE', 'README.md', 'package-lock.json', 'package.json', 'tsconfig.json'],
  ...['client', 'docs', 'server', 'syntaxes', 'tests'],
]

describe('the repository', () => {
  it('has these entries at its top level, besides dot-files and what is built', () => {
    const found = readdirSync(root).filter(
      (name) => !name.startsWith('.') && !['node_modules', 'dist'].includes(name),
    )
    expect(found.sort()).toEqual(topLevel.sort())
  })

  it('locks every package by its content, and names no place to fetch it from', () => {
    const { packages } = JSON.parse(read('package-lock.json')) as {
      packages: Record<string, { integrity?: string; resolved?: string }>
    }
    const { '': _project, ...installed } = packages
    expect(Object.keys(installed).length).toBeGreaterThan(100)
    for (const [name, { integrity, resolved }] of Object.entries(installed)) {
      expect(integrity, name).toMatch(/^sha512-/)
      expect(resolved, name).toBeUndefined()
    }
  })

  it('is tested in CI by the command its README gives', () => {
    expect(read('.ci/run').trimEnd().split('\n').at(-1)).toBe('npm ci && npm test')
    expect(read('README.md')).toContain('npm ci && npm test')
    expect(read('.github/workflows/ci.yml')).toContain('run: .ci/run')
  })

  it('has every file its scripts start', () => {
    const { scripts } = JSON.parse(read('package.json')) as { scripts: Record<string, string> }
    const files = Object.values(scripts).flatMap((line) => line.match(/[\w./-]+\.ts\b/g) ?? [])
    expect(files.length).toBeGreaterThan(0)
    for (const file of files) expect(existsSync(join(root, file)), file).toBe(true)
  })
})
