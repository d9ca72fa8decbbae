import { check, theLanguage } from '../../../checks/check.ts'
import { otherFeet, unknownFeet } from '../feet-named.ts'

export default check({
  id: 'alignment/move-of-unknown-foot',
  severity: 'error',
  title: 'Move of an unknown foot',
  why: 'The foot that was really moved then seems untouched in the log.',
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
  move after dry-1 { done: 2026-03-04  forward: up 2 flats }
#                                      ^^^^^^^ no foot called forward
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
  move after dry-1 { done: 2026-03-04  fwd: up 2 flats }
}`,
  run: (_facts, lookup) =>
    unknownFeet(
      [...lookup.block.others].map(([name, { at, node }]) => ({
        name,
        at: { section: at.section, span: node.name.span },
      })),
      lookup,
    ),
  fixes: (finding, { block, lookup }) =>
    otherFeet(finding, lookup, (name) => block?.others.has(name) === true),
})
