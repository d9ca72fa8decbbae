import { elide } from '../../quantity/elide.ts'
import { atHead, fileCheck, theLanguage } from '../check.ts'
import { concessionsOf, coveredBy, isInForce, outlives } from '../concessions.ts'

export default fileCheck({
  id: 'job/concession-expired',
  severity: 'warning',
  title: 'Concession past its last day',
  why: 'The concession accepted the finding only until its last day, so the finding counts again. In an as-built job it stays accepted, because what was handed over does not change with the calendar; but not if the concession had ended before the reading or the move it is about.',
  source: theLanguage,
  fires: `drive main {
  coupling { flange-diameter: 100 mm  gauge-diameter: 110 mm }
}
concession alignment/gauge-diameter-beyond-flange {
#<- ended on 2020-04-15
  on:         main.coupling
  reason:     "gauge on an arm, set out in the drawing"
  granted-by: "design office"
  until:      2020-04-15
}`,
  quiet: `drive main {
  coupling { flange-diameter: 100 mm  gauge-diameter: 110 mm }
}
concession alignment/gauge-diameter-beyond-flange {
  on:         main.coupling
  reason:     "gauge on an arm, set out in the drawing"
  granted-by: "design office"
  until:      9999-12-31
}`,
  file: (view) =>
    concessionsOf(view.blocks)
      .filter((concession) => !isInForce(concession, view.today))
      .map((concession) => {
        const { block, check, until, grantedBy } = concession
        const { findings, latest } = coveredBy(concession, view)
        const still = findings.length > 0 && outlives(concession, latest, view)
        return atHead(block, {
          message: `The concession for ${elide(check)} ended on ${until}.`,
          ...(still && { detail: 'The job is as-built, so what it accepted stays accepted.' }),
          todo: `Fix the fault, or ask ${elide(grantedBy)} for a new date.`,
          found: view.today,
          limit: until,
        })
      }),
})
