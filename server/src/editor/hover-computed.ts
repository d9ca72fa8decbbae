import { type Lookup, lookupFrom } from '../job/lookup.ts'
import type { Block } from '../job/model.ts'
import type { Scope } from '../job/scope.ts'
import { correctionOf } from '../plans/alignment.ts'
import { lastReading } from '../plans/alignment-moves.ts'
import { correctionMarkdown } from '../plans/alignment-words.ts'
import { cableLoading } from '../plans/cable-loading.ts'
import { cableMarkdown } from '../plans/cable-words.ts'

/** What is worked out from a block, where there is something. */
export function computedMarkdown(block: Block, scope: Scope): string | undefined {
  switch (block.kind) {
    case 'reading':
      return readingMarkdown(block, lookupFrom(block, scope))
    case 'bed': {
      const reading = block.parent && lastReading(block.parent)
      return reading && readingMarkdown(reading, lookupFrom(reading, scope))
    }
    case 'cable': {
      const outcome = cableLoading(block, lookupFrom(block, scope))
      return outcome.ok ? cableMarkdown(outcome.value) : outcome.fault.words
    }
    default:
      return undefined
  }
}

/** What a reading asks of each foot, or why that cannot be said. */
function readingMarkdown(reading: Block, lookup: Lookup): string {
  const outcome = correctionOf(reading, lookup)
  if (outcome.ok) return correctionMarkdown(outcome.value, lookup.system)
  const title = ['Reading', ...(reading.name === undefined ? [] : [reading.name])].join(' ')
  return `**${title}: no correction**\n\n${outcome.fault.words}`
}
