import { capital } from '../../../common/capital.ts'
import type { Block } from '../../../job/model.ts'
import type { Lookup } from '../../../store/lookup.ts'
import { formulasMarkdown } from '../../common/figure-words.ts'
import { headed, type Markdown, md, paragraphs, prose } from '../../common/markdown.ts'
import type { Ground, View } from '../../common/view.ts'
import { readingFigures } from '../figures/reading.ts'
import { stepFigures } from '../figures/step.ts'
import { trustedOn } from '../plan-trust.ts'
import { briefVerdict, shortChange } from '../plans/brief-words.ts'
import { type Correction, correctionOf } from '../plans/correction.ts'
import { logUpTo } from '../plans/log.ts'
import { sparkline } from '../plans/log-words.ts'
import { changeOf } from '../plans/reading-change.ts'
import { correctionMarkdown } from '../plans/words.ts'

/** What a reading asks of each foot, or why that cannot be said. */
export function readingMarkdown(reading: Block, lookup: Lookup, ground: Ground): Markdown {
  const outcome = trustedOn(reading, lookup, ground)
  if (!outcome.ok)
    return paragraphs(md`**${headed('Reading', reading.name)}: no correction**`, prose(outcome.fault.words))
  const progress = sparkline(logUpTo(reading, lookup))
  return paragraphs(
    correctionMarkdown(outcome.value, lookup.system),
    progress === undefined || progress === '' ? undefined : prose(`Readings so far: ${progress}.`),
    formulasMarkdown([...readingFigures, ...stepFigures]),
  )
}

/** Nothing where the reading cannot be worked out: the findings say why. */
export function worked(lookup: Lookup): Correction | undefined {
  const outcome = correctionOf(lookup.block, lookup)
  return outcome.ok ? outcome.value : undefined
}

export const reading: View = {
  on: 'reading',
  hover: (lookup, ground) => readingMarkdown(lookup.block, lookup, ground),
  /** Its verdict only while no finding in it says the same. What changed comes last: it may be too long for the line. */
  lenses: (lookup) => {
    const found = worked(lookup)
    if (!found) return []
    const change = changeOf(lookup.block, lookup)
    const isWithin = found.verdict === 'within' && !found.contradictory
    return [
      ...(isWithin ? [capital(briefVerdict(found, lookup.system))] : []),
      'Plan',
      ...(change ? [capital(shortChange(change, lookup.system))] : []),
    ]
  },
}
