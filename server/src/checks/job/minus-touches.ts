import { elide } from '../../quantity/elide.ts'
import { problemCheck, theLanguage } from '../check.ts'
import { declaredAt } from '../declared-at.ts'
import { replace, textAt } from '../fix-text.ts'

/** `2.5-1` with other signs between the two numbers. */
const written = (text: string, sign: string): string => text.replace(/(?<=[\d)])[-−]/, sign)

export default problemCheck({
  id: 'job/minus-touches',
  problem: 'minus-touches',
  severity: 'error',
  title: 'Minus without spaces',
  why: 'Between two numbers, a minus without spaces can be a difference, a ratio or two limits. Spaces make it a difference.',
  source: theLanguage,
  fires: `propeller {
  blades: 5-2
#         ^^^ 5 - 2 for a difference
}`,
  quiet: `propeller { blades: 5 - 2 }`,
  words: (_p, text) => ({
    message: `The - in ${elide(text)} has no spaces: not clear whether it is a difference.`,
    todo: `Write ${elide(written(text, ' - '))} for a difference, or the one value that you mean.`,
    found: text,
  }),
  // None is preferred: only the person knows.
  fixes: ({ at }, { block }) => {
    const text = textAt(at)
    const ratio = declaredAt(block, at)?.shape.mayBeRatio ? [written(text, ':')] : []
    return [...ratio, written(text, ' - ')].map((meant) => ({
      title: `Write ${meant}`,
      edits: [replace(at, meant)],
      uncovers: true,
    }))
  },
})
