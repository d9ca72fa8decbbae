import { problemCheck, theLanguage } from '../check.ts'

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
})
