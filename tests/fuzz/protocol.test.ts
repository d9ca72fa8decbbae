import { describe, expect, it } from 'vitest'
import { fuzzProtocol } from './protocol.ts'

describe('an editor that does everything at random', { timeout: 120_000 }, () => {
  it.each([1, 2])(
    'is answered always, told what a fresh server would tell, and stops nothing (seed %i)',
    async (seed) => {
      expect(await fuzzProtocol({ seed, steps: 300 })).toEqual([])
    },
  )
})
