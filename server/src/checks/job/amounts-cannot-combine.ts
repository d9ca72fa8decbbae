import { problemCheck, theLanguage } from '../check.ts'

export default problemCheck({
  id: 'job/amounts-cannot-combine',
  problem: 'cannot-combine',
  severity: 'error',
  title: 'Amounts that cannot be combined',
  why: 'A length and a mass cannot be added. A temperature such as 90 degC cannot be used in arithmetic, because its zero is arbitrary.',
  source: theLanguage,
  fires: `seal {
  free-length: 148 mm + 2 kg
#              ^^^^^^^^^^^^^ cannot be
}`,
  quiet: `seal { free-length: 148 mm + 2 mm }`,
  words: (p, written) => ({
    message: `In ${written}, ${p.left} and ${p.right} cannot be combined with ${p.operator}.`,
    todo: 'Check the units on both sides.',
    found: written,
  }),
})
