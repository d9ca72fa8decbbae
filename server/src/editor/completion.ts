import type { Block, Place, Section } from '../job/model.ts'
import { headingOffers } from './completion-headings.ts'
import { itemOffers } from './completion-items.ts'
import type { Asking, Here, Offer } from './completion-offer.ts'
import { pathOffers, provenanceOffers } from './completion-paths.ts'
import { valueOffers } from './completion-values.ts'
import { cursorContext, type Frame, framesAtEnd } from './cursor-context.ts'

export interface Completion {
  readonly offers: readonly Offer[]
  /** What an offer is written over. */
  readonly replace: Place
  /** Whether something has to stand there. */
  readonly expected: boolean
}

/** What may be written at a place in the text; where it was not asked for, but a character was `typed`, only what has to stand there. */
export function completion(
  asking: Asking,
  section: Section,
  offset: number,
  { typed }: { readonly typed?: string | undefined } = {},
): Completion | undefined {
  const told = cursorContext(section, offset)
  if (!told) return undefined
  const within =
    told.on === 'item' && told.frames.length === 0 ? openBefore(asking, section, offset) : undefined
  const context = within ? { ...told, frames: framesAtEnd(within) } : told
  const frame = context.frames.at(-1)
  const blocks = asking.analysis.bound(asking.file, within ?? section).blocks
  const here: Here = {
    ...asking,
    section,
    context,
    frame,
    block: blockOf(blocks, context.frames),
    scope: asking.analysis.scope(asking.file),
  }
  const { offers, expected } = offered(here)
  if (offers.length === 0) return undefined
  if (typed !== undefined && !isWelcome({ expected }, context.word, typed)) return undefined
  return { offers, replace: { section, span: context.replace }, expected }
}

/** Blank lines go with the block that follows: where the one before was never closed, they are still in that. */
function openBefore({ file }: Asking, section: Section, offset: number): Section | undefined {
  const { sections } = file.document
  const isBlank = section.text.slice(0, offset).trim() === ''
  return isBlank ? sections[sections.indexOf(section) - 1] : undefined
}

/** The block of the innermost frame, as it was bound. */
function blockOf(blocks: readonly Block[], frames: readonly Frame[]): Block | undefined {
  let among = blocks
  let found: Block | undefined
  for (const { start } of frames) {
    found = among.find(({ node }) => node.kind.span.start === start)
    among = found?.children ?? []
  }
  return found
}

function offered(here: Here): Pick<Completion, 'offers' | 'expected'> {
  const { context, frame, section } = here
  switch (context.on) {
    case 'item':
      return { offers: itemOffers(here), expected: false }
    case 'heading':
      return { offers: headingOffers(here, context), expected: true }
    case 'provenance':
      return { offers: provenanceOffers(context.words, here.today), expected: true }
    case 'path':
      return { offers: pathOffers(here, context.quoted), expected: true }
    case 'value': {
      const { offers, expected, ended } = valueOffers(here, context)
      const oneLine = frame && !/[\r\n]/.test(section.text.slice(frame.opening, context.replace.start))
      return { offers: ended && oneLine ? [...offers, ...itemOffers(here)] : offers, expected }
    }
  }
}

/** Whether nobody is in the way who offers something unasked, as the character is typed. */
const isWelcome = ({ expected }: Pick<Completion, 'expected'>, word: string, typed: string): boolean =>
  typed === '.' || typed === '/' ? word.endsWith(typed) : expected
