import { check, commonPractice } from '../../../checks/check.ts'
import { atRead, correction } from '../at-read.ts'

export default check({
  id: 'alignment/offset-beside-pilot',
  severity: 'information',
  title: 'Offset read on a coupling with a pilot',
  why: 'A pilot that fits holds the flanges concentric, so there is no offset. If one is read, the pilot is worn, not engaged, or missing.',
  source: commonPractice('common practice, no source'),
  on: 'reading',
  plan: 'goes-on',
  onceReplaced: 'stays',
  needs: { pilot: 'coupling.pilot' },
  fires: `drive main {
  coupling { flange-diameter: 100 mm  pilot: yes  gap-variation: max 0.10 mm [maker] }
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.80 mm, starboard 1.80 mm, bottom 1.80 mm, port 1.80 mm
    offsets: top 0.10 mm, starboard 0 mm, bottom -0.10 mm, port 0 mm
#            ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ pilot
  }
}`,
  quiet: `drive main {
  coupling { flange-diameter: 100 mm  pilot: yes  gap-variation: max 0.10 mm [maker] }
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.80 mm, starboard 1.80 mm, bottom 1.80 mm, port 1.80 mm
  }
}`,
  run: ({ pilot }, lookup) => {
    const rim = correction(lookup)?.readBy.rim
    return pilot.value === 'yes' && rim
      ? [
          atRead(lookup, rim, {
            message: 'An offset was read, but the pilot of the coupling should hold it at zero.',
            detail: 'The offset that was read counts.',
            todo: 'Check that the pilot is engaged when you read the rims. If there is no pilot, write `pilot: no`.',
            related: [{ at: pilot.at, message: 'the pilot' }],
          }),
        ]
      : []
  },
})
