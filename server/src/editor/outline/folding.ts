import { memoizeByIdentity } from '../../common/memoize-by-identity.ts'
import { isUse } from '../../job/bind.ts'
import { type Document, lineIn, positionOf } from '../../job/document.ts'
import type { Section } from '../../job/model.ts'
import { Comment, endOf, Newline } from '../../syntax/tokens.ts'
import { blocksIn, type Span } from '../../syntax/tree.ts'

/** Lines that can be folded away behind the first of them, counted from zero. */
export interface Fold {
  readonly first: number
  readonly last: number
  readonly of: 'block' | 'comments' | 'uses'
}

/** The folds of a text: blocks, comments of several lines, `use` lines below each other. */
export function foldsOf(document: Document): readonly Fold[] {
  const inSections = document.sections.flatMap((section) => {
    const from = positionOf(document, section, 0).line
    return folds(section).map(({ first, last, of }) => ({ first: from + first, last: from + last, of }))
  })
  return [...inSections, ...useRuns(document)]
}

/** The folds within a section, by its own lines. */
const folds = memoizeByIdentity((section: Section): readonly Fold[] => {
  const { text } = section
  const { items } = section.parsed.tree
  const fold = ({ start, end }: Span, of: Fold['of']): Fold[] => {
    const first = lineIn(section, start)
    const last = lineIn(section, end)
    return last > first ? [{ first, last, of }] : []
  }
  const blocks = [...blocksIn(items)].flatMap(({ span }) =>
    // The line with the closing brace stays in sight, where it is all there is on it.
    fold(
      {
        start: span.start,
        end: /\n[ \t]*\}$/.test(text.slice(span.start, span.end))
          ? text.lastIndexOf('\n', span.end - 1)
          : span.end,
      },
      'block',
    ),
  )
  return [...blocks, ...commentRuns(section).flatMap((run) => fold(run, 'comments'))]
})

/** Comments that have their lines to themselves, from the first to the last of them below each other. */
function commentRuns({ parsed }: Section): readonly Span[] {
  const runs: Span[] = []
  let run: Span | undefined
  let newlines = 1 // since the last thing on the line
  for (const token of parsed.tree.tokens) {
    if (token.tokenType === Newline) newlines += 1
    else if (token.tokenType === Comment && newlines > 0) {
      if (run && newlines === 1) runs.pop()
      run = { start: run && newlines === 1 ? run.start : token.startOffset, end: endOf(token) }
      runs.push(run)
      newlines = 0
    } else if (token.image.trim() !== '') {
      newlines = 0
      run = undefined
    }
  }
  return runs
}

/** `use` lines that follow each other: each is a section of its own. */
function useRuns(document: Document): readonly Fold[] {
  const runs: Fold[] = []
  for (const section of document.sections) {
    const uses = section.parsed.tree.items.filter(isUse)
    const [use] = uses
    if (!use || section.parsed.tree.items.length > uses.length) continue
    const first = positionOf(document, section, use.span.start).line
    const last = positionOf(document, section, uses.at(-1)?.span.end ?? use.span.end).line
    const before = runs.at(-1)
    if (before?.last === first - 1) runs[runs.length - 1] = { ...before, last }
    else runs.push({ first, last, of: 'uses' })
  }
  return runs.filter(({ first, last }) => last > first)
}
