import { problemCheck, theLanguage } from '../check.ts'

export default problemCheck({
  id: 'job/value-empty',
  problem: 'value-empty',
  severity: 'error',
  title: 'Fact without a value',
  why: 'A fact that is begun and not finished says nothing yet.',
  source: theLanguage,
  fires: `seal {
  free-length:
# ^^^^^^^^^^^ no value
}`,
  quiet: `seal { free-length: 148 mm }`,
  words: (p) => ({
    message: `${p.name} has no value yet.`,
    todo: `Write ${p.words.split(':')[0]}, such as ${p.example}.`,
    data: { example: p.example },
  }),
})
