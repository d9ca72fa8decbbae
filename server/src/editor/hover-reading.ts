import type { Lookup } from '../job/lookup.ts'
import { type Block, childrenOf, factOf } from '../job/model.ts'
import { correctionOf } from '../plans/alignment.ts'
import { correctionMarkdown } from '../plans/alignment-words.ts'

/** What a reading asks of each foot, or why that cannot be said. */
export function readingMarkdown(reading: Block, lookup: Lookup): string {
  const outcome = correctionOf(reading, lookup)
  return outcome.ok
    ? correctionMarkdown(outcome.value, lookup.system)
    : `**Reading ${reading.name ?? ''}: no correction**\n\n${outcome.fault.words}`
}

/** The reading a bed stands by now: the last by date, and of one day the last in the file. */
export function latestReading(bed: Block): Block | undefined {
  const taken = (reading: Block) => factOf(reading, 'reading.taken')?.value ?? ''
  return (bed.parent ? childrenOf(bed.parent, 'reading') : []).reduce<Block | undefined>(
    (latest, reading) => (latest && taken(latest) > taken(reading) ? latest : reading),
    undefined,
  )
}
