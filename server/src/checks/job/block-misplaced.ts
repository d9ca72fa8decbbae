import { problemCheck, theLanguage } from '../check.ts'

export default problemCheck({
  id: 'job/block-misplaced',
  problem: 'misplaced-block',
  severity: 'error',
  title: 'Block in the wrong place',
  why: 'A block describes the block around it. In the wrong place it describes the wrong thing, or nothing.',
  source: theLanguage,
  fires: `drive main {
  job "x" { vessel: "y" }
# ^^^ the file itself
}`,
  quiet: `job "x" { vessel: "y" }`,
  words: (p) => ({
    message: `A ${p.kind} block cannot go here; it belongs in ${p.within.map((w) => (w === 'top' ? 'the file itself' : w)).join(' or ')}.`,
    todo: 'Move it, or close the block above it.',
  }),
})
