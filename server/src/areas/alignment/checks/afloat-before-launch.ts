import { at, check, theLanguage } from '../../../checks/check.ts'
import { factOf } from '../../../job/model.ts'
import { hoursAfloat } from '../plans/reading-history.ts'

export default check({
  id: 'alignment/afloat-before-launch',
  severity: 'warning',
  title: 'Reading afloat dated before the launch',
  why: 'A boat is not afloat before it is launched, so one of the two dates or `afloat` is wrong. The target of the reading depends on which.',
  source: theLanguage,
  on: 'reading',
  plan: 'waits',
  onceReplaced: 'stays',
  needs: { taken: 'reading.taken' },
  fires: `job "Launch" { vessel: "Launch 07"  launched: 2026-03-18 }
drive main {
  coupling { flange-diameter: 100 mm  gap-variation: max 0.10 mm [maker]  offset: max 0.15 mm [maker] }
  reading dry-1 {
    taken: 2026-03-17
#          ^^^^^^^^^^ before the boat was launched
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
    if (!launched || hours === undefined || hours >= 0) return []
    return [
      at(taken, {
        beforeAsBuilt: true,
        message: 'The reading is marked afloat, but it was taken before the boat was launched.',
        todo: 'Find out which is wrong: `taken`, `afloat`, or `launched` of the job.',
        related: [{ at: launched.at, message: 'launched' }],
      }),
    ]
  },
})
