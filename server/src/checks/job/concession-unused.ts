import { elide } from '../../quantity/elide.ts'
import { atHead, fileCheck, theLanguage } from '../check.ts'
import { blocksAt, concessionsOf, coveredBy } from '../concessions.ts'
import { takeOut } from '../fix-text.ts'

export default fileCheck({
  id: 'job/concession-unused',
  severity: 'warning',
  title: 'Concession that accepts nothing',
  why: 'What it accepted is gone, or it names the wrong block. Left standing, it would accept the next fault of its kind unread.',
  source: theLanguage,
  fires: `drive main { gear { ratio: 2.5 } }
concession alignment/gaps-impossible {
#<- no finding of alignment/gaps-impossible
  on:         main
  reason:     "read again after launch"
  granted-by: "design office"
  until:      2026-04-15
}`,
  quiet: `drive main {
  coupling { flange-diameter: 100 mm  gauge-diameter: 110 mm }
}
concession alignment/gauge-diameter-beyond-flange {
  on:         main.coupling
  reason:     "gauge on an arm, set out in the drawing"
  granted-by: "design office"
  until:      2026-04-15
}`,
  file: (view) =>
    concessionsOf(view.blocks)
      .filter(
        (concession) => view.checkIds.includes(concession.check) && coveredBy(concession, view).length === 0,
      )
      .map((concession) => {
        const { block, check, on } = concession
        const known = blocksAt(view.blocks, on).length > 0
        return atHead(block, {
          message: known
            ? `There is no finding of ${check} in ${elide(on)}.`
            : `There is no block ${elide(on)}, and so no finding of ${check} in it.`,
          todo: known
            ? 'Take the concession out; an error of area job cannot be accepted at all.'
            : 'Name the block with dots from the drive down, such as starboard.dry-2.',
          found: elide(on),
        })
      }),
  fixes: ({ at }, { block }) =>
    block ? [{ title: 'Take the concession out', edits: [takeOut(at.section, block.node.span)] }] : [],
})
