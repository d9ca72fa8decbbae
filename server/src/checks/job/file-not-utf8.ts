import { elide } from '../../quantity/elide.ts'
import { problemCheck, theLanguage } from '../check.ts'
import { refusalWords } from '../refusal-words.ts'

export default problemCheck({
  id: 'job/file-not-utf8',
  problem: 'file-not-utf8',
  severity: 'error',
  title: 'File that is not UTF-8 text',
  why: 'Nothing in it is checked. In another encoding some characters would be read as others, and formatting would destroy them.',
  source: theLanguage,
  fires: `use "parts/not-utf8.wright"
#   ^^^^^^^^^^^^^^^^^^^^^^^ not UTF-8 text`,
  quiet: `# nothing is used`,
  words: (p) => ({
    message: refusalWords(p.path === undefined ? 'This file' : elide(p.path), p),
    todo: 'Save the file as UTF-8.',
    ...(p.path !== undefined && { found: elide(p.path) }),
  }),
})
