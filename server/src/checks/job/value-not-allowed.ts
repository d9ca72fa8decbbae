import { problemCheck, theLanguage } from '../check.ts'

export default problemCheck({
  id: 'job/value-not-allowed',
  problem: 'not-this-value',
  severity: 'error',
  title: 'Value of another form than expected',
  why: 'What cannot be read as it should be is not checked.',
  source: theLanguage,
  fires: `coupling {
  kind: rigit
#       ^^^^^ rigid
}`,
  quiet: `coupling { kind: rigid }`,
  words: (p, written) => ({
    message: `${p.expected.replace(/^./, (c) => c.toUpperCase())} was expected here, not ${written}.`,
    todo: p.nearest ? `Did you mean ${p.nearest}?` : 'See the example in the reference.',
    found: written,
    limit: p.expected,
    ...(p.nearest && { data: { nearest: p.nearest } }),
  }),
})
