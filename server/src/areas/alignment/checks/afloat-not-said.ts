import { at, check, commonPractice } from '../../../checks/check.ts'
import { factOf } from '../../../job/model.ts'
import { isLater } from '../../common/days.ts'

export default check({
  id: 'alignment/afloat-not-said',
  severity: 'warning',
  title: 'Reading after the launch without `afloat`',
  why: 'A hull changes shape when it is launched. Without `afloat`, the reading gets the target of a dry one. If the boat was afloat, that is the wrong target.',
  source: commonPractice('dry and afloat are told apart (common practice, no source)'),
  on: 'reading',
  plan: 'waits',
  onceReplaced: 'stays',
  needs: { taken: 'reading.taken' },
  fires: `job "Launch" { vessel: "Launch 07"  launched: 2026-03-18 }
drive main {
  coupling { flange-diameter: 100 mm  gap-variation: max 0.10 mm [maker]  offset: max 0.15 mm [maker] }
  reading dry-1 {
    taken: 2026-04-20
#          ^^^^^^^^^^ after the launch
    gauge: 0.02 mm
    gaps: top 1.80 mm, starboard 1.80 mm, bottom 1.80 mm, port 1.80 mm
    offsets: top 0 mm, starboard 0 mm, bottom 0 mm, port 0 mm
  }
}`,
  quiet: `job "Launch" { vessel: "Launch 07"  launched: 2026-03-18 }
drive main {
  coupling { flange-diameter: 100 mm  gap-variation: max 0.10 mm [maker]  offset: max 0.15 mm [maker] }
  reading dry-1 {
    taken: 2026-04-20
    gauge: 0.02 mm
    afloat: yes
    gaps: top 1.80 mm, starboard 1.80 mm, bottom 1.80 mm, port 1.80 mm
    offsets: top 0 mm, starboard 0 mm, bottom 0 mm, port 0 mm
  }
}`,
  run: ({ taken }, lookup) => {
    const [job] = lookup.ofKind('job')
    const launched = job && factOf(job, 'job.launched')
    const { facts, unread } = lookup.block
    if (!launched || facts.has('afloat') || unread.has('afloat')) return []
    if (!isLater(taken.value, launched.value)) return []
    return [
      at(taken, {
        message: 'The reading was taken after the launch but does not say whether the boat was afloat.',
        todo: 'Write `afloat: yes`, or `afloat: no` if the boat was hauled out again.',
        related: [{ at: launched.at, message: 'launched' }],
      }),
    ]
  },
})
