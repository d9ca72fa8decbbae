import { problemCheck, theLanguage } from '../check.ts'

export default problemCheck({
  id: 'job/line-not-understood',
  problem: 'line-not-understood',
  severity: 'error',
  title: 'Line that says nothing',
  why: 'A fact is a name, a colon and a value. A line of another form is passed over.',
  source: theLanguage,
  fires: `seal {
  free-length 148 mm
# ^^^^^^^^^^^^^^^^^^ colon
}`,
  quiet: `seal { free-length: 148 mm }`,
  words: (_p, written) => ({
    message: 'This line is not a fact: a name, a colon and a value.',
    todo: 'Put a colon after the name.',
    found: written,
  }),
})
