import { at, check, published } from '../../../checks/check.ts'
import { formatLength, formatLimit } from '../../../quantity/format-measures.ts'
import { isStillSoft, softLimit, softOf } from '../plans/lifts.ts'
import { aboutSoft } from '../plans/soft-foot-words.ts'

export default check({
  id: 'alignment/soft-foot',
  severity: 'warning',
  title: 'Soft foot',
  why: 'A foot that rises when its fastening is slackened does not rest on the bed. The machine bends when it is tightened, and the coupling moves with every nut. No alignment holds until the foot is supported. An as-built job may not leave a soft foot open. Once its lift has been read again and is within the limit, the finding is history and only information.',
  source: published(
    'general industry alignment tolerance table: 0.06 mm at any speed; raise it by the difference: Maintenance Scheduling for Mechanical Equipment, US Bureau of Reclamation, FIST 4-1A',
  ),
  on: 'reading',
  plan: 'goes-on',
  onceReplaced: 'stays',
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
  run: ({ lifts }, lookup) => {
    const found = softOf(lookup.block, lookup)
    if (!found) return []
    const limit = formatLimit(softLimit, lookup.system)
    const isSoft = isStillSoft(lookup.block, lookup)
    const worst = formatLength(Math.max(...lifts.value.map(({ lift }) => lift)), lookup.system)
    return [
      at(lifts, {
        ...(isSoft ? { beforeAsBuilt: true } : { severity: 'information' }),
        message: `${found.soft.length > 1 ? 'Feet rise' : 'A foot rises'} by up to ${worst} when slackened; ${limit} is allowed.`,
        detail: `Soft: ${found.soft.join(', ')}. ${isSoft ? 'While a foot is soft, do not trust the reading of the coupling.' : 'A later reading found it supported.'}`,
        todo: isSoft ? aboutSoft(found, lookup.system) : 'Use the later reading.',
        found: worst,
        limit: `at most ${limit}`,
      }),
    ]
  },
})
