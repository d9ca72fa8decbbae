import { problemCheck, theLanguage } from '../check.ts'

export default problemCheck({
  id: 'job/amounts-cannot-combine',
  problem: 'cannot-combine',
  severity: 'error',
  title: 'Amounts that cannot be put together',
  why: 'A length and a mass have no sum, and a temperature read from its own zero takes part in no arithmetic.',
  source: theLanguage,
  fires: `seal {
  free-length: 148 mm + 2 kg
#              ^^^^^^^^^^^^^ cannot be
}`,
  quiet: `seal { free-length: 148 mm + 2 mm }`,
  words: (p, written) => ({
    message: `In ${written}, ${p.left} and ${p.right} cannot be put together with ${p.operator}.`,
    todo: 'Check the units on both sides.',
    found: written,
  }),
})
