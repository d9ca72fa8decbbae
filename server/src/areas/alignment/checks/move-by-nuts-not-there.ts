import { check, theLanguage } from '../../../checks/check.ts'
import { elide } from '../../../quantity/elide.ts'
import type { FootMove } from '../../../vocabulary/shapes/foot-move.ts'

export default check({
  id: 'alignment/move-by-nuts-not-there',
  severity: 'error',
  title: 'Move in turns on a bed with shims',
  why: 'A turn or a flat is a height only on a thread. A bed with shims has no nuts to turn, so the log does not say what was done.',
  source: theLanguage,
  on: 'move',
  plan: 'waits',
  fires: `drive main {
  bed {
    adjuster: shims
    foot aft { from-coupling: 180 mm  across: 140 mm port }
    foot fwd { from-coupling: 560 mm  across: 140 mm starboard }
  }
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm
  }
  move after dry-1 { done: 2026-03-04  aft: up 1 turn }
#                                           ^^^^^^^^^ no nuts
}`,
  quiet: `drive main {
  bed {
    adjuster: shims
    foot aft { from-coupling: 180 mm  across: 140 mm port }
    foot fwd { from-coupling: 560 mm  across: 140 mm starboard }
  }
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm
  }
  move after dry-1 { done: 2026-03-04  aft: up 0.3 mm }
}`,
  needs: { adjuster: 'bed.adjuster' },
  run: ({ adjuster }, { block }) =>
    adjuster.value !== 'shims'
      ? []
      : [...block.others.values()]
          .filter(({ value }) => (value as FootMove).turn !== undefined)
          .map(({ at, name }) => ({
            at,
            message: `The bed has shims, so foot ${elide(name)} has no nuts to turn.`,
            todo: 'Write the height instead, such as up 0.3 mm. Or correct `adjuster` of the bed if it has studs and nuts.',
            related: [{ at: adjuster.at, message: 'shims' }],
          })),
})
