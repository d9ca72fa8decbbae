import { problemCheck, theLanguage } from '../check.ts'
import { insert, textAt } from '../fix-text.ts'

export default problemCheck({
  id: 'job/text-not-closed',
  problem: 'text-not-closed',
  severity: 'error',
  title: 'Text without its closing quote',
  why: 'A text ends on the line where it begins.',
  source: theLanguage,
  fires: `job "x" {
  vessel: "Launch
#         ^^^^^^^ closing quote
}`,
  quiet: `job "x" { vessel: "Launch" }`,
  words: () => ({
    message: 'The closing quote is missing.',
    todo: 'Put a " at the end of the text.',
    data: { add: '"' },
  }),
  fixes: ({ at }) => {
    const written = textAt(at).trimEnd()
    // A quote with nothing behind it may be the closing one.
    if (written === '"') return []
    return [
      {
        title: 'Add the closing quote',
        edits: [insert(at.section, at.span.start + written.length, '"')],
        preferred: true,
        uncovers: true,
      },
    ]
  },
})
