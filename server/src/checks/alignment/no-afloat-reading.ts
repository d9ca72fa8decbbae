import { factOf } from '../../job/model.ts'
import { lastReading } from '../../plans/alignment-moves.ts'
import { atHead, check, published } from '../check.ts'

export default check({
  id: 'alignment/no-afloat-reading',
  severity: 'information',
  title: 'Last reading taken dry',
  why: 'A hull changes shape when it takes the water. Only a reading afloat, fuel and ballast aboard, shows how the coupling stands in service.',
  source: published('US Army TM 55-1905-220-14: afloat only, fuel and ballast aboard'),
  on: 'reading',
  plan: 'goes-on',
  fires: `job "Launch" {
  vessel: "Launch 07"
  status: issued
}
drive main {
  coupling { flange-diameter: 100 mm  gap-variation: max 0.10 mm [maker]  offset: max 0.15 mm [maker] }
  reading dry-1 {
# ^^^^^^^^^^^^^ taken dry
    taken: 2026-03-04
    gauge: 0.02 mm
    afloat: no
    gaps: top 1.80 mm, starboard 1.80 mm, bottom 1.80 mm, port 1.80 mm
    offsets: top 0 mm, starboard 0 mm, bottom 0 mm, port 0 mm
  }
}`,
  quiet: `job "Launch" {
  vessel: "Launch 07"
  status: issued
}
drive main {
  coupling { flange-diameter: 100 mm  gap-variation: max 0.10 mm [maker]  offset: max 0.15 mm [maker] }
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    afloat: yes
    gaps: top 1.80 mm, starboard 1.80 mm, bottom 1.80 mm, port 1.80 mm
    offsets: top 0 mm, starboard 0 mm, bottom 0 mm, port 0 mm
  }
}`,
  run: (_facts, context) => {
    const { block } = context
    const [job] = context.ofKind('job')
    const status = job && factOf(job, 'job.status')
    const last = block.parent && lastReading(block.parent)
    if (
      last !== block ||
      block.unread.has('afloat') ||
      (status?.value !== 'issued' && status?.value !== 'as-built')
    )
      return []
    const afloat = factOf(block, 'reading.afloat')?.value
    if (afloat === 'yes') return []
    return [
      atHead(block, {
        ...(status.value === 'as-built' && { severity: 'warning' }),
        message: `The job is ${status.value}, and its last reading of the coupling, ${block.name ?? ''}, ${afloat === 'no' ? 'was taken dry' : 'does not say whether the boat was afloat'}.`,
        todo: 'Read the coupling afloat, settled, with fuel and ballast aboard, and say `afloat: yes`.',
      }),
    ]
  },
})
