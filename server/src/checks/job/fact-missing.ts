import { problemCheck, theLanguage } from '../check.ts'
import { addFact } from '../fix-text.ts'

export default problemCheck({
  id: 'job/fact-missing',
  problem: 'fact-missing',
  severity: 'error',
  title: 'Fact that has to be there',
  why: 'Without it the block says too little to be checked.',
  source: theLanguage,
  fires: `drive main {
  coupling { kind: rigid }
# ^^^^^^^^ flange-diameter
}`,
  quiet: `drive main { coupling { flange-diameter: 100 mm } }`,
  words: (p) => ({
    message: `Missing in the ${p.kind}: ${p.name}.`,
    todo: `Add it, such as \`${p.name}: ${p.example}\`.`,
    limit: p.name,
    data: { add: p.name, example: p.example },
  }),
  fixes: ({ data }, { block }) =>
    block && data?.add
      ? [
          {
            title: `Add ${data.add}`,
            edits: [addFact(block, data.add)],
            preferred: true,
            leaves: ['job/value-empty'],
          },
        ]
      : [],
})
