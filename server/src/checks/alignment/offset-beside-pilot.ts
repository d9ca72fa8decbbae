import { check, commonPractice } from '../check.ts'
import { atRead, correction } from '../correction.ts'

export default check({
  id: 'alignment/offset-beside-pilot',
  severity: 'information',
  title: 'Offset read although a pilot holds it',
  why: 'A pilot that fits holds the flanges concentric, so there is no offset to read. Where one is read, the pilot is worn, not engaged, or not there.',
  source: commonPractice('common practice, no source'),
  on: 'reading',
  plan: 'goes-on',
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
  run: ({ pilot }, context) => {
    const rim = correction(context)?.readBy.rim
    return pilot.value === 'yes' && rim
      ? [
          atRead(context, rim, {
            message:
              'An offset was read, yet the coupling is said to have a pilot, which should hold it at nothing. The offset that was read counts.',
            todo: 'See whether the pilot is engaged when the rims are read; if there is none, say `pilot: no`.',
            related: [{ at: pilot.at, message: 'the pilot' }],
          }),
        ]
      : []
  },
})
