import { elide } from '../../quantity/elide.ts'
import { atHead, fileCheck, theLanguage } from '../check.ts'
import { concessionsOf, coveredBy, isBlock } from '../concessions.ts'
import { takeOut } from '../fix-text.ts'

export default fileCheck({
  id: 'job/concession-unused',
  severity: 'warning',
  title: 'Concession that accepts nothing',
  why: 'What it accepted is gone, or it names the wrong block. If it stays, it will accept the next fault of this kind before anyone has looked at it.',
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
        (concession) =>
          view.checkIds.includes(concession.check) && coveredBy(concession, view).findings.length === 0,
      )
      .map((concession) => {
        const { block, check, on } = concession
        const known = isBlock(on, view)
        if (coveredBy(concession, view).isThere)
          return atHead(block, {
            message: `A finding of ${check} cannot be accepted: it is a fault in the text.`,
            todo: 'Correct the text, and delete the concession.',
            found: elide(on),
          })
        return atHead(block, {
          message: known
            ? `There is no finding of ${check} in ${elide(on)}.`
            : `There is no block ${elide(on)}, and so no finding of ${check} in it.`,
          todo: known
            ? 'Delete the concession.'
            : 'Name the block with dots from the drive down, such as starboard.dry-2.',
          found: elide(on),
        })
      }),
  fixes: ({ at }, { block }) =>
    block ? [{ title: 'Delete the concession', edits: [takeOut(at.section, block.node.span)] }] : [],
})
