import { problemCheck, theLanguage } from '../check.ts'
import { insert } from '../fix-text.ts'

export default problemCheck({
  id: 'job/bracket-not-closed',
  problem: 'bracket-not-closed',
  severity: 'error',
  title: 'Bracket that is not closed',
  why: 'Without it, nobody knows where the origin of a value or a part of a calculation ends.',
  source: theLanguage,
  fires: `seal {
  free-length: 148 mm [maker
#                     ^^^^^^ ] is missing
}`,
  quiet: `seal { free-length: 148 mm [maker] }`,
  words: ({ closing }) => ({
    message: `The closing ${closing} is missing.`,
    todo: `Put a ${closing} after what belongs in the brackets.`,
    data: { add: closing },
  }),
  fixes: ({ at, data }) =>
    data?.add === undefined
      ? []
      : [
          {
            title: 'Add the closing bracket',
            edits: [insert(at.section, at.span.end, data.add)],
            preferred: true,
            uncovers: true,
          },
        ],
})
