import type { Span } from '../syntax/tree.ts'
import type { Draft, Layer } from './draft.ts'
import type { BindingProblem, Mention, Place, Section } from './model.ts'
import type { Outside } from './other.ts'

/** What a section is given its meaning with. */
export interface Surroundings {
  readonly section: Section
  readonly roots: readonly Draft[]
  readonly scope: Outside
  readonly report: (at: Place, problem: BindingProblem) => void
  readonly refer: (mention: Mention) => void
}

/** The text that a value is read from: the block's own, or that of the block its drive takes it from. */
export interface Text {
  readonly section: Section
  readonly placeOf: (span: Span) => Place
  readonly report: (span: Span, problem: BindingProblem) => void
  readonly refer: (mention: Mention) => void
}

/** The texts that the values of a section are read from. */
export function textsFor({ section, report, refer }: Surroundings) {
  const own: Text = {
    section,
    placeOf: (span) => ({ section, span }),
    report: (span, problem) => report({ section, span }, problem),
    refer,
  }

  /** The text of another drive, read for a block that takes the fact from it. What is wrong with it stands at the block, and its words are
   * references in their own drive only. */
  function textOf(block: Draft, layer: Layer | undefined, fact: string): Text {
    if (!layer) return own
    const placeOf = (span: Span): Place => ({
      ...block.head,
      taken: { path: block.path, fact, of: layer.of.path, from: { section: layer.of.section, span } },
    })
    return {
      section: layer.of.section,
      placeOf,
      report: (span, problem) => report(placeOf(span), problem),
      refer: () => undefined,
    }
  }

  return { own, textOf }
}
