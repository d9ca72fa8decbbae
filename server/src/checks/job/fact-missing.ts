import { problemCheck, theLanguage } from '../check.ts'

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
    message: `The ${p.kind} does not say its ${p.name}.`,
    todo: `Add it, such as \`${p.name}: ${p.example}\`.`,
    limit: p.name,
    data: { add: p.name, example: p.example },
  }),
})
