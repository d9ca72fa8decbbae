import { elide } from '../../quantity/elide.ts'
import { problemCheck, theLanguage } from '../check.ts'

export default problemCheck({
  id: 'job/file-loop',
  problem: 'use-loop',
  severity: 'error',
  title: 'File that uses itself',
  why: 'If files use each other in a circle, what a name means would depend on which file is read first.',
  source: theLanguage,
  fires: `use "a.wright"
#   ^^^^^^^^^^ itself`,
  quiet: `# nothing is used`,
  words: (p) => ({
    message: `${elide(p.path)} uses itself, or a file that uses this one.`,
    todo: 'Delete the line, or move what both files need into a third file.',
    found: elide(p.path),
  }),
})
