import { problemCheck, theLanguage } from '../check.ts'

export default problemCheck({
  id: 'job/operand-missing',
  problem: 'value-missing',
  severity: 'error',
  title: 'Calculation with a missing part',
  why: 'An unfinished calculation has no value.',
  source: theLanguage,
  fires: `seal {
  free-length: 148 mm +
#                     ^ missing after
}`,
  quiet: `seal { free-length: 148 mm + 2 mm }`,
  words: (p) => ({
    message: `A value is missing after ${p.after}.`,
    todo: 'Write the rest, or delete the sign.',
  }),
})
