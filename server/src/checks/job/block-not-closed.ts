import { elide } from '../../quantity/elide.ts'
import { problemCheck, theLanguage } from '../check.ts'
import { closing } from '../fix-text.ts'

export default problemCheck({
  id: 'job/block-not-closed',
  problem: 'block-not-closed',
  severity: 'error',
  title: 'Block without its closing brace',
  why: 'What follows could be meant for this block or not.',
  source: theLanguage,
  fires: `seal {
#<- is not closed
  free-length: 148 mm`,
  quiet: `seal { free-length: 148 mm }`,
  words: (p) => ({
    message: `The ${elide(p.kind)} block is not closed.`,
    todo: 'Put a } after its last line, and indent what belongs inside.',
    data: { add: '}' },
  }),
  fixes: (_finding, { block }) =>
    block
      ? [
          {
            title: `Close the ${elide(block.kind)}`,
            edits: [closing(block)],
            preferred: true,
            uncovers: true,
          },
        ]
      : [],
})
