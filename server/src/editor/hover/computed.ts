import { correctionOf } from '../../areas/alignment/plans/correction.ts'
import { logUpTo } from '../../areas/alignment/plans/log.ts'
import { sparkline } from '../../areas/alignment/plans/log-words.ts'
import { lastReading } from '../../areas/alignment/plans/moves.ts'
import { correctionMarkdown } from '../../areas/alignment/plans/words.ts'
import { headed, type Markdown, md, paragraphs, prose } from '../../areas/common/markdown.ts'
import { cableLoading } from '../../areas/electrical/plans/cable-loading.ts'
import { cableMarkdown } from '../../areas/electrical/plans/cable-words.ts'
import type { Block } from '../../job/model.ts'
import type { View } from '../../job/per-section.ts'
import type { Lookup } from '../../store/lookup.ts'
import { lookupFrom } from '../../store/store.ts'
import { couplingMarkdown, driveMarkdown } from './drive.ts'
import { moveMarkdown, protectionMarkdown, sealMarkdown } from './parts.ts'

/** How a reading is corrected: with what was found in its file, where that is known. */
export type Correcting = typeof correctionOf

/** What is worked out from a block, where there is something, and by which formula. */
export function computedMarkdown(
  block: Block,
  view: View,
  correct: Correcting = correctionOf,
): Markdown | undefined {
  const computed = ofBlock(lookupFrom(block, view), correct)
  const formula = formulas[block.kind]
  return computed && paragraphs(computed, formula === undefined ? undefined : prose(`Formula: ${formula}`))
}

function ofBlock(lookup: Lookup, correct: Correcting): Markdown | undefined {
  const { block } = lookup
  switch (block.kind) {
    case 'reading':
      return readingMarkdown(block, lookup, correct)
    case 'bed': {
      const reading = block.parent && lastReading(block.parent)
      return reading && readingMarkdown(reading, lookup.from(reading), correct)
    }
    case 'cable': {
      const outcome = cableLoading(block, lookup)
      return outcome.ok ? cableMarkdown(outcome.value) : prose(outcome.fault.words)
    }
    case 'drive':
      return driveMarkdown(block, lookup)
    case 'coupling':
      return couplingMarkdown(block, lookup)
    case 'seal':
      return sealMarkdown(block, lookup)
    case 'protection':
      return protectionMarkdown(block, lookup)
    case 'move':
      return moveMarkdown(block, lookup)
    default:
      return undefined
  }
}

const alignment =
  'gap at an angle = mean gap - radius × (slope up × cos + slope to starboard × sin), fitted to all places by least squares; height of a foot = -(offset + slope × distance forward of the faces).'

/** How the results of a kind come about, and where that is from. */
const formulas: Readonly<Record<string, string | undefined>> = {
  reading: alignment,
  bed: alignment,
  coupling:
    'gap variation = diameter × slope of the face; within if value + U is inside the limit, outside if value - U is beyond it (ISO 14253-1).',
  cable:
    'can carry = table value × place × bundling × conductors in parallel; drop = current × resistance at working temperature, out and back or per phase (IEC 60228, ASTM B258).',
  seal: 'compression = free length - fitted length (definition).',
  protection:
    'at least 1.25 × the current (NEC practice for continuous loads), at most what the cable can carry (33 CFR 183.455(c)).',
  move: 'a flat is pitch / 6 (lead of a single-start thread = pitch); slope = the straight line through the heights of the feet, by least squares.',
}

/** What a reading asks of each foot, or why that cannot be said. */
function readingMarkdown(reading: Block, lookup: Lookup, correct: Correcting): Markdown {
  const outcome = correct(reading, lookup)
  if (outcome.ok) {
    const progress = sparkline(logUpTo(reading, lookup))
    return paragraphs(
      correctionMarkdown(outcome.value, lookup.system),
      progress === undefined || progress === '' ? undefined : prose(`Readings so far: ${progress}.`),
    )
  }
  return paragraphs(md`**${headed('Reading', reading.name)}: no correction**`, prose(outcome.fault.words))
}
