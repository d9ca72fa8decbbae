// Every spelling that the reference lists can be written (docs/reference.md): it is known as a unit, though of another kind than a length.
import { expect, it } from 'vitest'
import { units } from '../../server/src/quantity/units.ts'
import { read } from '../job/meaning.ts'

it.each(units.flatMap(({ name, aliases }) => [name, ...aliases]))('%s is read as a unit', (unit) => {
  const { problems } = read(`seal { free-length: 2 ${unit} }`)
  const types = problems.map(({ type }) => type)
  expect(types.filter((type) => type !== 'wrong-kind' && type !== 'outside-allowed')).toEqual([])
})
