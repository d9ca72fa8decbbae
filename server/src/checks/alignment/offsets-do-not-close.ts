import { sayAngle } from '../../plans/alignment-fault.ts'
import { sayRound } from '../../plans/alignment-readings.ts'
import { saidLength } from '../../plans/alignment-words.ts'
import { check, published } from '../check.ts'
import { atRead, correction } from '../correction.ts'
import { nextReading } from '../fix-alignment.ts'

export default check({
  id: 'alignment/offsets-do-not-close',
  severity: 'warning',
  title: 'Offsets that contradict each other',
  why: 'The steps between two round rims at opposite places have the same sum wherever the axes stand: top and bottom together equal port and starboard together. Where they do not, a step was misread, or a rim is not round.',
  source: published(
    'Bloch & Geitner, Machinery Component Maintenance and Repair: top + bottom = sum of the sides, within two gauge steps',
  ),
  on: 'reading',
  fires: `drive main {
  coupling { flange-diameter: 100 mm  gap-variation: max 0.10 mm [maker]  offset: max 0.10 mm [maker] }
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.80 mm, starboard 1.80 mm, bottom 1.80 mm, port 1.80 mm
    offsets: top 0.5 mm, starboard 0 mm, bottom 0.5 mm, port 0 mm
#            ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ do not close
  }
}`,
  quiet: `drive main {
  coupling { flange-diameter: 100 mm  gap-variation: max 0.10 mm [maker]  offset: max 0.10 mm [maker] }
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.80 mm, starboard 1.80 mm, bottom 1.80 mm, port 1.80 mm
    offsets: top 0.5 mm, starboard 0 mm, bottom -0.5 mm, port 0 mm
  }
}`,
  run: (_facts, context) => {
    const c = correction(context)
    if (c?.rimClosure?.state !== 'open') return []
    const { difference, allowed, odd } = c.rimClosure
    const found = saidLength(difference, context.system)
    const limit = saidLength(allowed, context.system)
    const by = c.readBy.rim ?? 'offsets'
    const values = context.block.facts.get(by)?.value as readonly { readonly angle: number }[] | undefined
    const place = odd === undefined ? undefined : values?.[odd]
    return [
      atRead(context, by, {
        message: `The ${sayRound(by)} do not close: the sums of opposite pairs differ by ${found}, and the gauge explains ${limit}. ${
          place
            ? `The one at ${sayAngle(place.angle)} is the odd one out.`
            : 'Which one is wrong cannot be told from these.'
        }`,
        todo: 'Read all of them again before anything is moved.',
        found,
        limit: `at most ${limit}`,
      }),
    ]
  },
  fixes: ({ check: id }, ground) => nextReading(ground, id),
})
