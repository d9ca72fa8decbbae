import { elide } from '../../quantity/elide.ts'
import { problemCheck, theLanguage } from '../check.ts'

export default problemCheck({
  id: 'job/file-loop',
  problem: 'use-loop',
  severity: 'error',
  title: 'File that uses itself',
  why: 'Files that use each other in a circle have no beginning.',
  source: theLanguage,
  fires: `use "a.wright"
#   ^^^^^^^^^^ itself`,
  quiet: `# nothing is used`,
  words: (p) => ({
    message: `${elide(p.path)} uses itself, or a file that uses this one.`,
    todo: 'Take the line out, or move what both need into a third file.',
    found: elide(p.path),
  }),
})
