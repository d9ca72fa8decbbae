import { saidGauge, saidLength, saidSure } from '../../plans/alignment-words.ts'
import { check, published } from '../check.ts'
import { atRead, correction } from '../correction.ts'
import { nextReading } from '../fix-alignment.ts'

export default check({
  id: 'alignment/gap-variation-undecided',
  severity: 'warning',
  title: 'Gap variation too near its limit for this gauge',
  why: 'A reading is only as good as the step of its gauge. Where the limit lies inside the uncertainty, neither within nor outside can be claimed.',
  source: published('decision rule: ISO 14253-1'),
  on: 'reading',
  fires: `drive main {
  coupling { flange-diameter: 100 mm  gap-variation: max 0.10 mm [maker]  offset: max 0.15 mm [maker] }
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.85 mm, starboard 1.80 mm, bottom 1.75 mm, port 1.80 mm
#         ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ cannot be decided
    offsets: top 0 mm, starboard 0 mm, bottom 0 mm, port 0 mm
  }
}`,
  quiet: `drive main {
  coupling { flange-diameter: 100 mm  gap-variation: max 0.10 mm [maker]  offset: max 0.15 mm [maker] }
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.80 mm, starboard 1.80 mm, bottom 1.80 mm, port 1.80 mm
    offsets: top 0 mm, starboard 0 mm, bottom 0 mm, port 0 mm
  }
}`,
  run: (_facts, context) => {
    const c = correction(context)
    if (c?.gapVariation.verdict !== 'undecided') return []
    const found = saidSure(c.gapVariation.value, context.system)
    const allowed = saidLength(c.gapVariation.limit, context.system)
    const finer =
      c.decidedBy === undefined
        ? 'Read again: no finer gauge alone would decide.'
        : `Read with a gauge of ${saidGauge(c.decidedBy, context.system)} steps or finer.`
    return [
      atRead(context, c.readBy.face, {
        message: `The gap variation is ${found} and ${allowed} is allowed: with this gauge it cannot be decided whether it is within.`,
        todo: finer,
        found,
        limit: `at most ${allowed}`,
        assumptions: c.assumptions,
      }),
    ]
  },
  fixes: ({ check: id }, ground) => nextReading(ground, id),
})
