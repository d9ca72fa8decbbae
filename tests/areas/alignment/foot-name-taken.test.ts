// docs/reference.md: `done` and `by` are facts of a move; docs/language.md: `like` is one of every block.
import { expect, it } from 'vitest'
import { allChecks } from '../../../server/src/areas/index.ts'
import { findingsOf } from '../../checks/marks.ts'

it.each([
  ['done', true],
  ['by', true],
  ['like', true],
  ['aft', false],
])('a foot called %s cannot be logged: %s', (name, is) => {
  const text = `drive main {\n  bed {\n    foot ${name} { from-coupling: 180 mm  across: 0 mm }\n  }\n}\n`
  const found = findingsOf(text, allChecks).findings.map(({ check }) => check)
  expect(found.includes('alignment/foot-name-taken')).toBe(is)
})
