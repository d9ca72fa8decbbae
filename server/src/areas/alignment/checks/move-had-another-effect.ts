import { atHead, check, published } from '../../../checks/check.ts'
import { firstLine } from '../../../checks/one-line.ts'
import { elide } from '../../../quantity/elide.ts'
import { correction } from '../at-read.ts'
import { writeAsMade } from '../fix-move-discrepancy.ts'
import { formatMismatch } from '../plans/log-words.ts'
import { moveDiscrepancy } from '../plans/move-discrepancy.ts'
import { formatRoughly } from '../plans/move-discrepancy-words.ts'
import { movesCompared } from '../plans/reading-comparison.ts'

/** A machine whose forward end was to come up 1.17 mm, and the aft end 0.33 mm. */
const moved = (later: string) => `drive main {
  coupling { flange-diameter: 125 mm  gauge-diameter: 110 mm }
  bed {
    adjuster: stud-and-nuts
    thread: M16
    foot aft-port { from-coupling: 180 mm  across: 140 mm port }
    foot aft-stbd { from-coupling: 180 mm  across: 140 mm starboard }
    foot fwd-port { from-coupling: 560 mm  across: 140 mm port }
    foot fwd-stbd { from-coupling: 560 mm  across: 140 mm starboard }
  }
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.94 mm, starboard 1.78 mm, bottom 1.66 mm, port 1.82 mm
    offsets: top 0.06 mm, starboard -0.02 mm, bottom -0.06 mm, port 0.04 mm
  }
  move after dry-1 {
    done: 2026-03-04
    aft-port: up 1 flat
    aft-stbd: up 1 flat
    fwd-port: up 3.5 flats
    fwd-stbd: up 3.5 flats
  }
  reading dry-2 {
    taken: 2026-03-05
    gauge: 0.02 mm
${later}
  }
}`

export default check({
  id: 'alignment/move-had-another-effect',
  severity: 'warning',
  title: 'Move with an unexpected effect',
  why: 'The move, the thread and the places of the feet determine what the next reading must show. If it shows something else, by more than gauge and adjusters explain, there was a mistake: a nut turned the wrong way, a foot that hangs, swapped places, a move that was not made. The finding names every mistake that explains it, and says how to tell them apart. The plan gives no steps if one of them puts the reading or the bed in doubt: the next move could go the wrong way. Only readings in the same state are compared: afloat or ashore, hot or cold, with the end of the shaft free or supported. Each is compared with the last one that is not itself in doubt, so the same reading again settles nothing. Only the last complete reading has this finding.',
  source: published(
    'chi-square test at 99 % (NIST/SEMATECH e-Handbook, 1.3.6.7.4); how exactly a move is made: common practice, no source',
  ),
  on: 'reading',
  plan: 'goes-on',
  onceReplaced: 'stays',
  fires: moved(`    gaps: top 2.14 mm, starboard 1.78 mm, bottom 1.46 mm, port 1.82 mm
#         ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ Most likely the nuts at fwd-port and fwd-stbd were turned the wrong way
    offsets: top 1.10 mm, starboard -0.02 mm, bottom -1.10 mm, port 0.04 mm`),
  quiet: moved(`    gaps: top 1.82 mm, starboard 1.78 mm, bottom 1.78 mm, port 1.82 mm
    offsets: top 0.00 mm, starboard -0.02 mm, bottom 0.00 mm, port 0.04 mm`),
  run: (_facts, lookup) => {
    const { block, system } = lookup
    const discrepancy = moveDiscrepancy(block, lookup)
    if (!discrepancy) return []
    const { comparison } = discrepancy
    const by = correction(lookup)?.readBy.face
    const value = by && block.facts.get(by)
    const { noted } = comparison
    const what =
      discrepancy.since ??
      (noted
        ? `The moves since ${elide(comparison.since)} had an unexpected effect.`
        : formatRoughly(comparison))
    const head = atHead(block, {
      // A machine that went elsewhere than its log says is not handed over unexplained.
      beforeAsBuilt: true,
      ...firstLine(
        `${what} ${noted ? 'Expected from them:' : 'Expected:'} ${formatMismatch(comparison, system)}. ${discrepancy.explained}`,
      ),
      todo: discrepancy.first,
      related: movesCompared(comparison, block).map((move) => ({
        at: move.head,
        message: 'what was to be done',
      })),
    })
    return [value ? { ...head, at: value.at } : head]
  },
  fixes: (_finding, ground) => writeAsMade(ground),
})
