import { elide } from '../../quantity/elide.ts'
import { problemCheck, theLanguage } from '../check.ts'

export default problemCheck({
  id: 'job/file-not-found',
  problem: 'use-missing',
  severity: 'error',
  title: 'File that cannot be found',
  why: 'What it should bring in is missing from every check.',
  source: theLanguage,
  fires: `use "parts/none.wright"
#   ^^^^^^^^^^^^^^^^^^^ cannot be found`,
  quiet: `# nothing is used`,
  words: (p) => ({
    message: `${elide(p.path)} cannot be found, or cannot be read.`,
    todo: 'The path is from the folder this file is in.',
    found: elide(p.path),
  }),
})
