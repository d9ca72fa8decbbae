// The engine throws RangeError too, so nothing that works out figures throws or catches it: what is out of range has a class of its own (common
// practice, no source).
import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'

const source = new URL('../../server/src/', import.meta.url)
const belowTheFaces = ['quantity/', 'engineering/', 'syntax/', 'vocabulary/', 'job/', 'checks/', 'areas/']
const files = belowTheFaces.flatMap((floor) =>
  readdirSync(new URL(floor, source), { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts'))
    .map((file) => floor + file),
)

const used = /\b(?:new|instanceof|extends)\s+RangeError\b/g

describe('RangeError', () => {
  it.each(files)('is neither thrown nor caught in %s', (file) => {
    expect(readFileSync(new URL(file, source), 'utf8').match(used) ?? []).toEqual([])
  })

  it('would be found', () => {
    const code = 'if (error instanceof RangeError) throw new RangeError(words)'
    expect(code.match(used)).toEqual(['instanceof RangeError', 'new RangeError'])
    expect('/** The engine throws RangeError too. */'.match(used)).toBeNull()
  })
})
