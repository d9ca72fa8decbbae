import { elide } from '../../quantity/elide.ts'
import type { FactNode } from '../../syntax/tree.ts'
import { problemCheck, theLanguage } from '../check.ts'
import { factAt, takeOut, textAt } from '../fix-text.ts'

/** The first word: of a heading, its kind; of a fact, its name. */
const kindIn = (heading: string): string => elide(heading.split(/\s/, 1)[0] ?? '')

export default problemCheck({
  id: 'job/duplicate',
  problem: 'duplicate',
  severity: 'error',
  title: 'Fact, block or name stated twice',
  why: 'If the same fact or name is written twice, one of the two is wrong. The first one counts.',
  source: theLanguage,
  fires: `seal {
  free-length: 148 mm
  free-length: 150 mm
# ^^^^^^^^^^^ twice
}`,
  quiet: `seal { free-length: 148 mm }`,
  words: (p, written) => {
    const what = elide(p.what)
    const [kind, first] = [kindIn(written), kindIn(textAt(p.first))]
    return {
      ...(p.isKind
        ? {
            message: `There is more than one ${what} here; the first one counts.`,
            todo: 'Keep the correct one. Delete the other.',
          }
        : kind === first
          ? { message: `${what} is stated twice; the first one counts.`, todo: 'Keep the correct one.' }
          : {
              message: `A ${kind} and a ${first} both go by ${what}: names are shared across kinds. The first is taken.`,
              todo: 'Give one of them another name.',
            }),
      found: what,
      related: [{ at: p.first, message: 'the first' }],
    }
  },
  fixes: ({ at, related }, { block }) => {
    const second = factAt(block, at)
    const first = related?.[0] && factAt(block, related[0].at)
    if (!first || !second) return []
    const out = (fact: FactNode) => [takeOut(at.section, fact.span)]
    const written = (fact: FactNode) => textAt({ section: at.section, span: fact.valueSpan })
    return written(first) === written(second) && !second.provenance
      ? [{ title: 'Delete the second one', edits: out(second), preferred: true, safe: true }]
      : [
          { title: `Keep the first, ${elide(written(first))}`, edits: out(second) },
          { title: `Keep the second, ${elide(written(second))}`, edits: out(first) },
        ]
  },
})
