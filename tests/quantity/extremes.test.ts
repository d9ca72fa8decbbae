import { expect, it } from 'vitest'
import { greatest, least } from '../../server/src/quantity/extremes.ts'

it('the ends of a list, however long, and of none', () => {
  const many = Array.from({ length: 300_000 }, (_, i) => (i * 7919) % 300_007)
  const sorted = many.toSorted((a, b) => a - b)
  expect([least(many), greatest(many)]).toEqual([sorted[0], sorted.at(-1)])
  expect([least([-2]), greatest([-2])]).toEqual([-2, -2])
  expect([least([]), greatest([])]).toEqual([undefined, undefined])
})
