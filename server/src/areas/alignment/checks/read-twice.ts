import { check, theLanguage } from '../../../checks/check.ts'
import { firstLine } from '../../../checks/one-line.ts'
import { atRead, readInto } from '../at-read.ts'
import { correctionOf } from '../plans/correction.ts'

export default check({
  id: 'alignment/read-twice',
  severity: 'error',
  title: 'Faces or rims read in two ways',
  why: 'Feelers and dial on the same faces never agree exactly. If a reading has both, it is not known which counts.',
  source: theLanguage,
  on: 'reading',
  plan: 'waits',
  onceReplaced: 'stays',
  fires: `drive main {
  coupling { flange-diameter: 100 mm  gap-variation: max 0.10 mm [maker]  offset: max 0.15 mm [maker] }
  reading dry-1 {
    taken: 2026-03-04
    gauge: 0.02 mm
    gaps: top 1.80 mm, starboard 1.80 mm, bottom 1.80 mm, port 1.80 mm
    offsets: top 0 mm, starboard 0 mm, bottom 0 mm, port 0 mm
    face-dial: top 0 mm, starboard 0 mm, bottom 0 mm, port 0 mm
#              ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ gaps and face-dial
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
    const outcome = correctionOf(lookup.block, lookup)
    if (outcome.ok || outcome.fault.type !== 'read-twice') return []
    return [
      atRead(lookup, readInto(lookup, 'reverse-dial', 'face-dial', 'rim-dial'), {
        ...firstLine(outcome.fault.words),
        todo: 'Keep the better of the two, or write each as a reading of its own.',
      }),
    ]
  },
})
