// What a bundle leaves out, nothing that ships may read.
import { globSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'

const src = join(import.meta.dirname, '../../server/src')

describe('the examples of the checks', () => {
  it('are read by nothing that ships', () => {
    const reads = globSync('**/*.ts', { cwd: src }).filter((path) =>
      /\.(fires|quiet)\b|\{[^{}:]*\b(fires|quiet)\b[^{}:]*\}/.test(readFileSync(join(src, path), 'utf8')),
    )
    expect(reads).toEqual([])
  })
})
