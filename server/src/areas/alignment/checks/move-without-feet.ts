import { atHead, check, theLanguage } from '../../../checks/check.ts'
import { elide } from '../../../quantity/elide.ts'

const job = (feet: string, mark = '') => `drive main {
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm
  }
  move after dry-1 { done: 2026-03-04${feet} }
${mark}}`

export default check({
  id: 'alignment/move-without-feet',
  severity: 'warning',
  title: 'Move that does not say what was done',
  why: 'A move with a date and without feet says that something was done, and not what. The next reading cannot be compared with it.',
  source: theLanguage,
  on: 'move',
  plan: 'goes-on',
  fires: job('', '# ^^^^^^^^^^^^^^^^ does not say which feet\n'),
  quiet: job('  fwd: up 2 flats'),
  run: (_facts, { block }) =>
    block.facts.has('done') && block.others.size === 0 && [...block.unread].every((name) => name === 'by')
      ? [
          atHead(block, {
            message: `This move after ${elide(block.about?.text ?? '')} does not say which feet were moved.`,
            todo: 'Write each foot with what was done to it, or delete the move if nothing was done.',
          }),
        ]
      : [],
})
