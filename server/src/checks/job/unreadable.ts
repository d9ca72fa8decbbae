import { elide } from '../../quantity/elide.ts'
import { problemCheck, theLanguage } from '../check.ts'
import { takeOut, textAt } from '../fix-text.ts'

export default problemCheck({
  id: 'job/unreadable',
  problem: 'unreadable',
  severity: 'error',
  title: 'Text that cannot be read',
  why: 'What cannot be read is not checked; the rest is.',
  source: theLanguage,
  fires: `seal {
  free-length: 148 mm ;
#                     ^ cannot be read
}`,
  quiet: `seal { free-length: 148 mm }`,
  words: (p) => ({
    message: `${p.text.trim() === '' ? 'This' : elide(p.text)} cannot be read here.`,
    todo: 'Take it out, or put it in quotes or behind a #.',
    found: elide(p.text),
  }),
  fixes: ({ at, found }) =>
    /^[^\w\s]$/.test(textAt(at))
      ? [
          {
            title: `Take ${found} out`,
            edits: [takeOut(at.section, at.span)],
            preferred: true,
            uncovers: true,
          },
        ]
      : [],
})
