import { problemCheck, theLanguage } from '../check.ts'

export default problemCheck({
  id: 'job/divided-by-zero',
  problem: 'divided-by-zero',
  severity: 'error',
  title: 'Division by zero',
  why: 'A division by zero has no result.',
  source: theLanguage,
  fires: `seal {
  free-length: 148 mm / 0
#              ^^^^^^^^^^ by zero
}`,
  quiet: `seal { free-length: 148 mm / 2 }`,
  words: (_p, written) => ({
    message: `${written} divides by zero.`,
    todo: 'Check the divisor.',
    found: written,
  }),
})
