import type { Lookup } from '../../job/lookup.ts'
import type { Block } from '../../job/model.ts'
import { softLimit, softOf, softUpTo } from '../../plans/alignment-lifts.ts'
import { lastReading } from '../../plans/alignment-moves.ts'
import { aboutSoft } from '../../plans/soft-foot-words.ts'
import { saidLength, saidLimit } from '../../quantity/said.ts'
import { isAsBuilt } from '../as-built.ts'
import { at, check, published } from '../check.ts'

/** Whether a foot that this reading found soft was not found to bear since. */
function isStillSoft(reading: Block, lookup: Lookup): boolean {
  const last = reading.parent && lastReading(reading.parent)
  return !last || softUpTo(last, lookup.from(last))?.in.includes(reading) === true
}

export default check({
  id: 'alignment/soft-foot',
  severity: 'warning',
  title: 'A foot that does not bear',
  why: 'A foot that rises when its own fastening is slackened was pulled down onto nothing: the machine bends as it is tightened, and the coupling moves with every nut. No alignment holds until the foot bears. In a job that is as-built, a foot that is still soft is an error.',
  source: published(
    'general industry alignment tolerance table: 0.06 mm at any speed; raise it by the difference: Maintenance Scheduling for Mechanical Equipment, US Bureau of Reclamation, FIST 4-1A',
  ),
  on: 'reading',
  plan: 'goes-on',
  needs: { lifts: 'reading.lifts' },
  fires: `drive main {
  coupling { flange-diameter: 100 mm  gap-variation: max 0.10 mm [maker]  offset: max 0.15 mm [maker] }
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.80 mm, starboard 1.80 mm, bottom 1.80 mm, port 1.80 mm
    offsets: top 0 mm, starboard 0 mm, bottom 0 mm, port 0 mm
    lifts: aft-port 0.13 mm, aft-stbd 0.05 mm, fwd-port 0.05 mm, fwd-stbd 0.05 mm
#          ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ aft-port
  }
}`,
  quiet: `drive main {
  coupling { flange-diameter: 100 mm  gap-variation: max 0.10 mm [maker]  offset: max 0.15 mm [maker] }
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.80 mm, starboard 1.80 mm, bottom 1.80 mm, port 1.80 mm
    offsets: top 0 mm, starboard 0 mm, bottom 0 mm, port 0 mm
    lifts: aft-port 0.05 mm, aft-stbd 0.05 mm, fwd-port 0.05 mm, fwd-stbd 0.05 mm
  }
}`,
  run: ({ lifts }, context) => {
    const found = softOf(context.block, context)
    if (!found) return []
    const limit = saidLimit(softLimit, context.system)
    const worst = saidLength(Math.max(...lifts.value.map(({ lift }) => lift)), context.system)
    return [
      at(lifts, {
        ...(isAsBuilt(context) && isStillSoft(context.block, context) && { severity: 'error' }),
        message: `${found.soft.join(', ')} ${found.soft.length > 1 ? 'rise' : 'rises'} by up to ${worst} when slackened; ${limit} is the most. While a foot is soft the reading of the coupling is not to be trusted.`,
        todo: aboutSoft(found, context.system),
        found: worst,
        limit: `at most ${limit}`,
      }),
    ]
  },
})
