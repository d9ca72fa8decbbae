import { elide } from '../../quantity/elide.ts'
import { problemCheck, theLanguage } from '../check.ts'

export default problemCheck({
  id: 'job/file-not-found',
  problem: 'use-missing',
  severity: 'error',
  title: 'File that cannot be found',
  why: 'The blocks of that file are missing, so what uses them is not checked.',
  source: theLanguage,
  fires: `use "parts/none.wright"
#   ^^^^^^^^^^^^^^^^^^^ cannot be found`,
  quiet: `# nothing is used`,
  words: (p, written) => ({
    message: `${elide(p.path)} cannot be found, or cannot be read.`,
    todo: written.includes('\\')
      ? 'Write / between the folders of the path. In quotes, \\ only marks a quote.'
      : 'Check the path: it starts from the folder of this file.',
    found: elide(p.path),
  }),
})
