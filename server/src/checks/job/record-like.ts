import { problemCheck, theLanguage } from '../check.ts'

export default problemCheck({
  id: 'job/record-like',
  problem: 'record-like',
  severity: 'error',
  title: 'Reading or move that is like another',
  why: 'A reading records what was read once, and a move what was done once. Figures copied from another one were not read: they would show a machine that was never measured.',
  source: theLanguage,
  fires: `drive main {
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps:  top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm
  }
  reading dry-2 { like: dry-1 }
#                 ^^^^ cannot be like
}`,
  quiet: `drive main {
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps:  top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm
  }
}`,
  words: ({ kind }) => ({
    message: `A ${kind} cannot be like another: nothing is taken.`,
    todo: `Remove \`like\`, and write what was ${kind === 'move' ? 'done' : 'read'} this time.`,
  }),
})
