import { problemCheck, theLanguage } from '../check.ts'

export default problemCheck({
  id: 'job/heading-unclear',
  problem: 'heading',
  severity: 'error',
  title: 'Heading that cannot be read',
  why: 'The heading names the block; without it nothing can refer to it.',
  source: theLanguage,
  fires: `drive {
# <- a name
}`,
  quiet: `drive main { }`,
  words: (p) => ({
    message: `A ${p.kind} block is headed by ${p.expected}.`,
    todo: `Write \`${p.kind}\`, ${p.expected}, then the brace.`,
    limit: p.expected,
  }),
})
