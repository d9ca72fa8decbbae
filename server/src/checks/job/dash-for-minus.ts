import { problemCheck, theLanguage } from '../check.ts'
import { replace } from '../fix-text.ts'

export default problemCheck({
  id: 'job/dash-for-minus',
  problem: 'dash',
  severity: 'error',
  title: 'Dash instead of a minus',
  why: 'Word processors and phones replace the minus with a dash. Whether a dash is a minus or only separates, nobody can see: the sign of a value must not be guessed.',
  source: theLanguage,
  fires: `drive d {
  target {
    afloat-up: –0.40 mm
#              ^ Write -
  }
}`,
  quiet: `drive d { target { afloat-up: -0.40 mm } }`,
  words: (_p, written) => ({
    message: `${written} is a dash, not a minus.`,
    todo: 'Write -.',
    found: written,
  }),
  fixes: ({ at }) => {
    const isSign = /[\d.]/.test(at.section.text[at.span.end] ?? '')
    return [
      { title: 'Write -', edits: [replace(at, '-')], uncovers: true, ...(isSign && { preferred: true }) },
    ]
  },
})
