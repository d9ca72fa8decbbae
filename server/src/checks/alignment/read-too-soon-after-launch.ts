import { factOf } from '../../job/model.ts'
import { between } from '../../plans/days.ts'
import { at, check, commonPractice } from '../check.ts'

export default check({
  id: 'alignment/read-too-soon-after-launch',
  severity: 'warning',
  title: 'Read too soon after launching',
  why: 'A hull goes on changing shape for a day or two after it takes the water, and carries the feet and the stern bearing with it.',
  source: commonPractice('24 to 48 hours after launching (common practice, no source)'),
  on: 'reading',
  plan: 'waits',
  needs: { taken: 'reading.taken', afloat: 'reading.afloat' },
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
  run: ({ taken, afloat }, context) => {
    const [job] = context.ofKind('job')
    const launched = job && factOf(job, 'job.launched')
    if (!launched || afloat.value !== 'yes') return []
    const hours = between(launched.value, taken.value) / 3_600_000
    if (hours >= 24) return []
    return [
      at(taken, {
        ...(hours < 0
          ? {
              message: 'The reading is said to be afloat, and was taken before the boat was launched.',
              todo: 'Find out which is wrong: `taken`, `afloat`, or `launched` of the job.',
            }
          : {
              message:
                'The reading was taken less than 24 hours after the boat was launched: the hull may still be settling.',
              todo: 'Read again 24 to 48 hours after launching, with fuel and ballast aboard.',
            }),
        related: [{ at: launched.at, message: 'launched' }],
      }),
    ]
  },
})
