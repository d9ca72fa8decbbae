import { elide } from '../../quantity/elide.ts'
import { problemCheck, theLanguage } from '../check.ts'
import { useNearest } from '../fix-text.ts'

export default problemCheck({
  id: 'job/curly-quotes',
  problem: 'curly-quotes',
  severity: 'error',
  title: 'Curly or single quotes',
  why: 'Word processors make quotes curly, and not always in pairs. Only straight double quotes show for sure where a text ends.',
  source: theLanguage,
  fires: `job "x" {
  vessel: “Launch 07”
#         ^^^^^^^^^^^ straight quotes
}`,
  quiet: `job "x" { vessel: "Launch 07" }`,
  words: (p) => {
    const straight = `"${p.text.replaceAll('\\', '\\\\')}"`
    return {
      message: 'A text needs straight double quotes.',
      todo: `Use straight quotes: ${elide(straight)}.`,
      data: { nearest: straight },
    }
  },
  fixes: ({ at, data }) => useNearest(at, data?.nearest),
})
