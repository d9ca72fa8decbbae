import { problemCheck, theLanguage } from '../check.ts'

export default problemCheck({
  id: 'job/value-outside',
  problem: 'outside-allowed',
  severity: 'error',
  title: 'Value outside what the fact can be',
  why: 'No real part is like this: a digit or a unit has slipped.',
  source: theLanguage,
  fires: `seal {
  free-length: 0 mm
#              ^^^^ outside what this can be: 1 mm to 2000 mm
}`,
  quiet: `seal { free-length: 148 mm }`,
  words: (p, written) => ({
    message: `${written} is outside what this can be: ${p.allowed}.`,
    todo: 'Check the number and its unit.',
    found: written,
    limit: p.allowed,
  }),
})
