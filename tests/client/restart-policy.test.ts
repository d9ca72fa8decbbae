import { describe, expect, it } from 'vitest'
import { mayRestart } from '../../client/src/restart-policy.ts'

const minute = 60_000

describe('a language server that died', () => {
  it('is started again three times', () => {
    expect(mayRestart([0], 0)).toBe(true)
    expect(mayRestart([0, 1, 2], 2)).toBe(true)
  })

  it('is left stopped at its fourth death within three minutes', () => {
    expect(mayRestart([0, minute, 2 * minute, 3 * minute - 1], 3 * minute - 1)).toBe(false)
  })

  it('is started again when the early deaths are long past', () => {
    expect(mayRestart([0, minute, 2 * minute, 4 * minute], 4 * minute)).toBe(true)
  })
})
