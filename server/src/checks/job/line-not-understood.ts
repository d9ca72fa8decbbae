import { findKind, vocabulary } from '../../vocabulary/index.ts'
import { problemCheck, theLanguage } from '../check.ts'
import { replace, textAt } from '../fix-text.ts'

/** What the line was to be, by its first word. */
function wordsFor(word: string): { readonly message: string; readonly todo: string } {
  if (word === 'use')
    return {
      message: 'Behind `use` a path in quotes was expected.',
      todo: 'Write it like this: `use "parts/stock.wright"`.',
    }
  if (findKind(word)) {
    const isFactToo = Object.values(vocabulary).some(({ facts }) => Object.hasOwn(facts, word))
    return {
      message: `${word} begins a block, and its { is missing.`,
      todo: `Put a { at the end of this line, and a } after the last line of the block${isFactToo ? '; or a colon after the name, for a fact' : ''}.`,
    }
  }
  return {
    message: 'This line is not a fact: a name, a colon and a value.',
    todo: 'Add a colon after the name.',
  }
}

export default problemCheck({
  id: 'job/line-not-understood',
  problem: 'line-not-understood',
  severity: 'error',
  title: 'Line that is not a fact',
  why: 'A fact is a name, a colon and a value. Other lines are ignored.',
  source: theLanguage,
  fires: `seal {
  free-length 148 mm
# ^^^^^^^^^^^^^^^^^^ colon
}`,
  quiet: `seal { free-length: 148 mm }`,
  words: (_p, written) => ({ ...wordsFor(/^[a-z-]+/.exec(written)?.[0] ?? ''), found: written }),
  fixes: ({ at }, { block }) => {
    const name = /^[^\s,:]+/.exec(textAt(at))?.[0] ?? ''
    const known = Object.hasOwn(findKind(block?.kind ?? '')?.facts ?? {}, name)
    const start = at.span.start + name.length
    // An equals sign is written where others have one.
    const sign = /^\s*=?/.exec(at.section.text.slice(start))?.[0].trimEnd().length ?? 0
    return known && textAt(at).length > name.length
      ? [
          {
            title: `Add a colon after ${name}`,
            edits: [replace({ section: at.section, span: { start, end: start + sign } }, ':')],
            preferred: true,
            uncovers: true,
          },
        ]
      : []
  },
})
