import { elide } from '../../quantity/elide.ts'
import { problemCheck, theLanguage } from '../check.ts'
import { closing } from '../fix-text.ts'

export default problemCheck({
  id: 'job/block-not-closed',
  problem: 'block-not-closed',
  severity: 'error',
  title: 'Block without its closing brace',
  why: 'Without the brace, only the indentation shows where the block ends. If that is wrong too, facts count for the wrong block.',
  source: theLanguage,
  fires: `seal {
  free-length: 148 mm
# ^^^^^^^^^^^^^^^^^^^ The seal block is not closed`,
  quiet: `seal { free-length: 148 mm }`,
  words: ({ heading }) => ({
    message: `The ${elide(heading.text)} block is not closed.`,
    todo: 'Put a } here.',
    data: { add: '}', heading },
  }),
  fixes: ({ data }, { block }) => {
    const heading = data?.['heading'] as { readonly span: { readonly start: number } } | undefined
    let open = block
    while (open && open.node.span.start !== heading?.span.start) open = open.parent
    return open
      ? [{ title: `Close the ${elide(open.kind)}`, edits: [closing(open)], preferred: true, uncovers: true }]
      : []
  },
})
