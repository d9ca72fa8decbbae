import { elide } from '../../quantity/elide.ts'
import { problemCheck, theLanguage } from '../check.ts'
import { refusalWords } from '../refusal-words.ts'

export default problemCheck({
  id: 'job/file-unreadable',
  problem: 'file-unreadable',
  severity: 'error',
  title: 'File or folder that cannot be read',
  why: 'Nothing in it is checked, so its faults are not found.',
  source: theLanguage,
  fires: `use "parts/unreadable.wright"
#   ^^^^^^^^^^^^^^^^^^^^^^^^^ cannot be read`,
  quiet: `# nothing is used`,
  words: (p) => ({
    message: refusalWords(
      p.path === undefined ? (p.isFolder ? 'This folder' : 'This file') : elide(p.path),
      p,
    ),
    todo: 'Check the path and who may read it.',
    ...(p.path !== undefined && { found: elide(p.path) }),
  }),
})
