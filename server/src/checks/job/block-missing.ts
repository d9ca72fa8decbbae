import { findKind } from '../../vocabulary/index.ts'
import { problemCheck, theLanguage } from '../check.ts'
import { addBlock, blank } from '../fix-text.ts'

export default problemCheck({
  id: 'job/block-missing',
  problem: 'block-missing',
  severity: 'error',
  title: 'Block that has to be there',
  why: 'Without it the block around it cannot be worked with.',
  source: theLanguage,
  fires: `drive main {
  bed { adjuster: shims }
# ^^^ foot
}`,
  quiet: `drive main {
  bed {
    adjuster: shims
    foot aft { from-coupling: 180 mm  across: 0 mm }
  }
}`,
  words: (p) => ({
    message: `The ${p.kind} has no ${p.name}.`,
    todo: `Add a ${p.name} block.`,
    limit: p.name,
    data: { add: p.name },
  }),
  fixes: ({ data }, { block }) => {
    const kind = findKind(data?.add ?? '')
    if (!block || !kind) return []
    const facts = Object.entries(kind.facts).filter(([, { required }]) => required)
    const lines = facts.map(([name]) => `  ${name}: ${blank}`)
    const name = kind.heading === 'name' ? ` ${kind.example.split(' ')[1]}` : ''
    return [
      {
        title: `Add a ${kind.kind}`,
        edits: [addBlock(block, [`${kind.kind}${name} {`, ...lines, '}'].join('\n'))],
        preferred: true,
        leaves: ['job/value-empty'],
      },
    ]
  },
})
