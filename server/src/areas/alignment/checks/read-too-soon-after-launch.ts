import { at, check, commonPractice } from '../../../checks/check.ts'
import { factOf } from '../../../job/model.ts'
import { hoursAfloat, hoursToSettle, replacedBy } from '../plans/reading-history.ts'

export default check({
  id: 'alignment/read-too-soon-after-launch',
  severity: 'warning',
  title: 'Reading too soon after the launch',
  why: 'A hull keeps changing shape for a day or two after the launch, and moves the feet and the stern bearing with it.',
  source: commonPractice('24 to 48 hours after launching (common practice, no source)'),
  on: 'reading',
  plan: 'waits',
  onceReplaced: replacedBy,
  needs: { taken: 'reading.taken' },
  fires: `job "Launch" { vessel: "Launch 07"  launched: 2026-03-18 }
drive main {
  coupling { flange-diameter: 100 mm  gap-variation: max 0.10 mm [maker]  offset: max 0.15 mm [maker] }
  reading dry-1 {
    taken: 2026-03-18
#          ^^^^^^^^^^ 24 hours
    gauge: 0.02 mm
    afloat: yes
    gaps: top 1.80 mm, starboard 1.80 mm, bottom 1.80 mm, port 1.80 mm
    offsets: top 0 mm, starboard 0 mm, bottom 0 mm, port 0 mm
  }
}`,
  quiet: `job "Launch" { vessel: "Launch 07"  launched: 2026-03-18 }
drive main {
  coupling { flange-diameter: 100 mm  gap-variation: max 0.10 mm [maker]  offset: max 0.15 mm [maker] }
  reading dry-1 {
    taken: 2026-03-20
    gauge: 0.02 mm
    afloat: yes
    gaps: top 1.80 mm, starboard 1.80 mm, bottom 1.80 mm, port 1.80 mm
    offsets: top 0 mm, starboard 0 mm, bottom 0 mm, port 0 mm
  }
}`,
  run: ({ taken }, lookup) => {
    const [job] = lookup.ofKind('job')
    const launched = job && factOf(job, 'job.launched')
    const hours = hoursAfloat(lookup.block, lookup)
    if (!launched || hours === undefined || hours < 0 || hours >= hoursToSettle) return []
    return [
      at(taken, {
        beforeAsBuilt: true,
        message: 'The reading was taken less than 24 hours after the boat was launched.',
        detail: 'The hull may still be settling.',
        todo: 'Read again 24 to 48 hours after launching, with fuel and ballast aboard.',
        related: [{ at: launched.at, message: 'launched' }],
      }),
    ]
  },
})
