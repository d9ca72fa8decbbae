import type { Block, Place, Section } from '../../job/model.ts'
import { findUnit } from '../../quantity/units.ts'
import { cursorContext, type Frame, framesAtEnd } from './cursor-context.ts'
import { headingOffers } from './headings.ts'
import { itemOffers } from './items.ts'
import type { CompletionContext, CompletionRequest, Offer } from './offer.ts'
import { pathOffers, provenanceOffers } from './paths.ts'
import { type Offered, valueOffers } from './values.ts'

export interface Completion {
  readonly offers: readonly Offer[]
  /** What an offer is written over. */
  readonly replace: Place
  /** What of it is written before the cursor. */
  readonly word: string
  /** Whether something has to stand there. */
  readonly expected: boolean
}

/** What may be written at a place in the text; where it was not asked for, but a character was `typed`, only what has to stand there.
 * Nothing where the word before the cursor is whole: an editor that takes an offer on Enter would not end the line. */
export function completion(
  asking: CompletionRequest,
  section: Section,
  offset: number,
  { typed }: { readonly typed?: string | undefined } = {},
): Completion | undefined {
  const found = cursorContext(section, offset)
  if (!found) return undefined
  const within =
    found.on === 'item' && found.frames.length === 0 ? openBefore(asking, section, offset) : undefined
  const context = within ? { ...found, frames: framesAtEnd(within) } : found
  const frame = context.frames.at(-1)
  const blocks = asking.analysis.bound(asking.file, within ?? section).blocks
  const here: CompletionContext = {
    ...asking,
    section,
    context,
    frame,
    block: blockOf(blocks, context.frames),
    scope: asking.analysis.scope(asking.file),
  }
  const { offers, expected, ended } = offered(here)
  if (offers.length === 0 || isWhole(here, offset, { offers, ended })) return undefined
  if (typed !== undefined && !isWelcome({ expected }, context.word, typed)) return undefined
  return { offers, replace: { section, span: context.replace }, word: context.word, expected }
}

const isoDate = /^\d{4}-\d{2}-\d{2}$/

/** Whether the cursor is behind a word, a number or a brace that needs nothing more. */
function isWhole(
  { context, section, block }: CompletionContext,
  offset: number,
  { offers, ended }: Pick<Offered, 'offers' | 'ended'>,
): boolean {
  const { word, replace } = context
  if (offset < replace.end) return false
  if (context.on === 'item' && section.text[offset - 1] === '}') return true
  const { number, fact } = context.on === 'value' ? context : { number: undefined, fact: '' }
  if (number !== undefined && word === '') {
    const value = block?.facts.get(fact)
    // A unit may stand once for several numbers: what is read without a problem is whole.
    const isRead = value !== undefined && value.origin === undefined
    return (ended || isRead) && section.text.endsWith(number, offset)
  }
  if (number !== undefined && findUnit(word)) return ended
  return isoDate.test(word) || offers.some(({ insert }) => insert.length === 1 && insert[0] === word)
}

/** Blank lines go with the block that follows: where the one before was never closed, they are still in that. */
function openBefore({ file }: CompletionRequest, section: Section, offset: number): Section | undefined {
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

function offered(here: CompletionContext): Offered {
  const { context, frame, section } = here
  switch (context.on) {
    case 'item':
      return { offers: itemOffers(here), expected: false, ended: false }
    case 'heading':
      return { offers: headingOffers(here, context), expected: true, ended: false }
    case 'provenance':
      return { offers: provenanceOffers(context.words, here.today), expected: true, ended: false }
    case 'path':
      return { offers: pathOffers(here, context.quoted), expected: true, ended: false }
    case 'value': {
      const { offers, expected, ended } = valueOffers(here, context)
      const oneLine = frame && !/[\r\n]/.test(section.text.slice(frame.opening, context.replace.start))
      return { offers: ended && oneLine ? [...offers, ...itemOffers(here)] : offers, expected, ended }
    }
  }
}

/** Whether nobody is in the way who offers something unasked, as the character is typed. */
const isWelcome = ({ expected }: Pick<Offered, 'expected'>, word: string, typed: string): boolean =>
  typed === '.' || typed === '/' ? word.endsWith(typed) : expected
