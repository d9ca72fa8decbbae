import { elide } from '../../quantity/elide.ts'
import { problemCheck, theLanguage } from '../check.ts'
import { insert } from '../fix-text.ts'

export default problemCheck({
  id: 'job/block-not-opened',
  problem: 'block-not-opened',
  severity: 'error',
  title: 'Block without its opening brace',
  why: 'Without the brace, only the indentation shows what is inside the block. If that is wrong too, facts count for the wrong block.',
  source: theLanguage,
  fires: `seal
# <- its { is missing
  free-length: 148 mm
}
`,
  quiet: `seal { free-length: 148 mm }`,
  words: ({ heading }) => ({
    message: `${elide(heading.text)} begins a block, and its { is missing.`,
    todo: 'Put a { here.',
    data: { add: '{' },
  }),
  fixes: ({ at }) => [
    {
      title: 'Add the opening brace',
      edits: [insert(at.section, at.span.end, ' {')],
      preferred: true,
      uncovers: true,
    },
  ],
})
