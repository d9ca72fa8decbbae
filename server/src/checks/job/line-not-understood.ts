import { findKind } from '../../vocabulary/index.ts'
import { problemCheck, theLanguage } from '../check.ts'
import { insert, textAt } from '../fix-text.ts'

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
  fixes: ({ at }, { block }) => {
    const name = /^[^\s,:]+/.exec(textAt(at))?.[0] ?? ''
    const known = Object.hasOwn(findKind(block?.kind ?? '')?.facts ?? {}, name)
    return known && textAt(at).length > name.length
      ? [
          {
            title: `Put a colon after ${name}`,
            edits: [insert(at.section, at.span.start + name.length, ':')],
            preferred: true,
            uncovers: true,
          },
        ]
      : []
  },
})
