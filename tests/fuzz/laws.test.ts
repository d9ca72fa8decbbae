import fc from 'fast-check'
import { describe, it } from 'vitest'
import { laws } from './laws.ts'

describe('any text at all', { timeout: 60_000 }, () => {
  it.each(Object.keys(laws))('%s', (name) => {
    const law = laws[name]
    if (!law) throw new Error(`no law: ${name}`)
    fc.assert(law, { numRuns: 150 })
  })
})
