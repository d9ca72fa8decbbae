import { type Lookup, lookupFrom } from '../job/lookup.ts'
import { type Block, childrenOf, factOf } from '../job/model.ts'
import type { Scope } from '../job/scope.ts'
import { correctionOf } from '../plans/alignment.ts'
import { correctionMarkdown } from '../plans/alignment-words.ts'
import { cableLoading } from '../plans/cable-loading.ts'
import { cableMarkdown } from '../plans/cable-words.ts'

/** What is worked out from a block, where there is something. */
export function computedMarkdown(block: Block, scope: Scope): string | undefined {
  switch (block.kind) {
    case 'reading':
      return readingMarkdown(block, lookupFrom(block, scope))
    case 'bed': {
      const reading = latestReading(block)
      return reading && readingMarkdown(reading, lookupFrom(reading, scope))
    }
    case 'cable': {
      const loading = cableLoading(block, lookupFrom(block, scope))
      return loading && cableMarkdown(loading)
    }
    default:
      return undefined
  }
}

/** What a reading asks of each foot, or why that cannot be said. */
function readingMarkdown(reading: Block, lookup: Lookup): string {
  const outcome = correctionOf(reading, lookup)
  return outcome.ok
    ? correctionMarkdown(outcome.value, lookup.system)
    : `**Reading ${reading.name ?? ''}: no correction**\n\n${outcome.fault.words}`
}

/** The reading a bed stands by now: the last by date, and of one day the last in the file. */
function latestReading(bed: Block): Block | undefined {
  const taken = (reading: Block) => factOf(reading, 'reading.taken')?.value ?? ''
  return (bed.parent ? childrenOf(bed.parent, 'reading') : []).reduce<Block | undefined>(
    (latest, reading) => (latest && taken(latest) > taken(reading) ? latest : reading),
    undefined,
  )
}
