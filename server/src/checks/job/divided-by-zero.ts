import { problemCheck, theLanguage } from '../check.ts'

export default problemCheck({
  id: 'job/divided-by-zero',
  problem: 'divided-by-zero',
  severity: 'error',
  title: 'Division by zero',
  why: 'What is divided by zero has no value.',
  source: theLanguage,
  fires: `seal {
  free-length: 148 mm / 0
#              ^^^^^^^^^^ by zero
}`,
  quiet: `seal { free-length: 148 mm / 2 }`,
  words: (_p, written) => ({
    message: `${written} divides by zero.`,
    todo: 'Check what it is divided by.',
    found: written,
  }),
})
