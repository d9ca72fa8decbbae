import { atHead, check, theLanguage } from '../../../checks/check.ts'
import { firstLine } from '../../../checks/one-line.ts'
import { correctionOf } from '../plans/correction.ts'

export default check({
  id: 'alignment/nothing-read',
  severity: 'error',
  title: 'Reading without values',
  why: 'The faces show how the machine is tilted, by gaps or by dial; so do the rims in two planes. Without either, the reading says nothing.',
  source: theLanguage,
  on: 'reading',
  plan: 'waits',
  onceReplaced: 'stays',
  fires: `drive main {
  coupling { flange-diameter: 100 mm  gap-variation: max 0.10 mm [maker]  offset: max 0.15 mm [maker] }
  reading dry-1 {
# ^^^^^^^^^^^^^ gaps
    taken: 2026-03-04
    gauge: 0.02 mm
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
  run: (_facts, lookup) => {
    const { block } = lookup
    if (['gaps', 'face-dial', 'gauge', 'rim-dial', 'reverse-dial'].some((name) => block.unread.has(name)))
      return []
    const outcome = correctionOf(block, lookup)
    return outcome.ok || outcome.fault.type !== 'no-gaps' || !block.facts.has('gauge')
      ? []
      : [
          atHead(block, {
            ...firstLine(outcome.fault.words),
            todo: 'Write the `gaps` or what the dials showed: `face-dial`, or `rim-dial` and `reverse-dial` with the places where they were read.',
          }),
        ]
  },
})
