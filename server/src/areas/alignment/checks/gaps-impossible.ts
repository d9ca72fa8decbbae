import { at, check, commonPractice } from '../../../checks/check.ts'
import { firstLine } from '../../../checks/one-line.ts'
import { type Block, childrenOf } from '../../../job/model.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { atRead, readInto } from '../at-read.ts'
import { correctionOf } from '../plans/correction.ts'

/** What stands in the way of the verdict, or of the steps, and the fact that is to blame. */
function faultOf(reading: Block, lookup: Lookup) {
  const outcome = correctionOf(reading, lookup)
  const fault = outcome.ok ? outcome.value.feetFault : outcome.fault
  return { ...fault, fact: fault?.at && lookup.blockOf(fault.at.block).facts.get(fault.at.fact) }
}

export default check({
  id: 'alignment/gaps-impossible',
  severity: 'error',
  title: 'Gaps that no coupling can have',
  why: 'If the gaps give a slope of more than one in ten, or the numbers cannot be used, a figure is wrong. Any move made from it would be wrong too.',
  source: commonPractice('common practice, no source'),
  on: 'reading',
  plan: 'waits',
  onceReplaced: 'stays',
  fires: `drive main {
  coupling { flange-diameter: 100 mm  gap-variation: max 0.10 mm [maker]  offset: max 0.15 mm [maker] }
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 22 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm
#         ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ wrong
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
  run: (_facts, lookup) => {
    const found = faultOf(lookup.block, lookup)
    if (found.type !== 'slope-too-large' && found.type !== 'impossible') return []
    const { words = '', fact } = found
    const todo =
      'Check the gaps, their units, the gauge, and the sizes of coupling and bed. Do not move anything.'
    if (!fact || fact.at.section !== lookup.block.section)
      return [
        atRead(lookup, readInto(lookup, 'gaps', 'face-dial', 'rim-dial'), {
          ...firstLine(words),
          todo,
          ...(fact && { related: [{ at: fact.at, message: `the ${fact.name}` }] }),
        }),
      ]
    // A fact that all readings share is said once, for the first of them.
    const first = childrenOf(lookup.block.parent ?? lookup.block, 'reading').find(
      (reading) => faultOf(reading, lookup.from(reading)).fact === fact,
    )
    return first === lookup.block ? [at(fact, { ...firstLine(words), todo })] : []
  },
})
