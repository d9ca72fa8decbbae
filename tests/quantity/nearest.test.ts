// The word a person most likely meant: examples of slips, no outside source.
import { describe, expect, it } from 'vitest'
import { nearest } from '../../server/src/quantity/nearest.ts'

describe('the nearest word', () => {
  it.each([
    ['free-lenght', 'free-length'],
    ['Free_Length', 'free-length'],
    ['shaf', 'shaft'],
    ['mn', 'mm'],
  ])('to %s is %s', (written, meant) => {
    expect(nearest(written, ['free-length', 'fitted-length', 'shaft', 'mm', 'kg'])).toBe(meant)
  })

  it('is none when nothing is near', () => {
    expect(nearest('windlass', ['shaft', 'mm'])).toBeUndefined()
    expect(nearest('x', [])).toBeUndefined()
  })
})
