import { elide } from '../../quantity/elide.ts'
import { atHead, fileCheck, theLanguage } from '../check.ts'
import { concessionsOf, isInForce } from '../concessions.ts'

export default fileCheck({
  id: 'job/concession-expired',
  severity: 'warning',
  title: 'Concession past its last day',
  why: 'It accepted the finding up to a day that has gone by. The finding counts again.',
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
  file: ({ blocks, today }) =>
    concessionsOf(blocks)
      .filter((concession) => !isInForce(concession, today))
      .map(({ block, check, until, grantedBy }) =>
        atHead(block, {
          message: `The concession for ${elide(check)} ended on ${until}.`,
          todo: `Put the fault right, or ask ${elide(grantedBy)} for a new date.`,
          found: today,
          limit: until,
        }),
      ),
})
