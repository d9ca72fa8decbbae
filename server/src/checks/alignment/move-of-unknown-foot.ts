import { check, theLanguage } from '../check.ts'
import { otherFeet, unknownFeet } from '../feet-named.ts'

export default check({
  id: 'alignment/move-of-unknown-foot',
  severity: 'error',
  title: 'Move of a foot the bed has not',
  why: 'A move that is logged for no foot of the bed is lost to whoever reads the log next: the foot that was really moved seems untouched.',
  source: theLanguage,
  on: 'move',
  plan: 'waits',
  fires: `drive main {
  bed {
    adjuster: stud-and-nuts
    foot aft { from-coupling: 180 mm  across: 140 mm port }
    foot fwd { from-coupling: 560 mm  across: 140 mm starboard }
  }
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm
  }
  move after dry-1 { forward: up 2 flats }
#                    ^^^^^^^ no foot called forward
}`,
  quiet: `drive main {
  bed {
    adjuster: stud-and-nuts
    foot aft { from-coupling: 180 mm  across: 140 mm port }
    foot fwd { from-coupling: 560 mm  across: 140 mm starboard }
  }
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm
  }
  move after dry-1 { fwd: up 2 flats }
}`,
  run: (_facts, context) =>
    unknownFeet(
      [...context.block.others].map(([name, { at, node }]) => ({
        name,
        at: { section: at.section, span: node.name.span },
      })),
      context,
    ),
  fixes: (finding, { block, lookup }) =>
    otherFeet(finding, lookup, (name) => block?.others.has(name) === true),
})
