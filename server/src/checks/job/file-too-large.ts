import { elide } from '../../quantity/elide.ts'
import { problemCheck, theLanguage } from '../check.ts'
import { refusalWords } from '../refusal-words.ts'

export default problemCheck({
  id: 'job/file-too-large',
  problem: 'file-too-large',
  severity: 'error',
  title: 'File over 5 MB',
  why: 'Nothing in it is checked. No job is this large, and reading the file would take too much time and memory.',
  source: theLanguage,
  fires: `use "parts/too-large.wright"
#   ^^^^^^^^^^^^^^^^^^^^^^^^ is larger than 5 MB`,
  quiet: `# nothing is used`,
  words: (p) => ({
    message: refusalWords(p.path === undefined ? 'This file' : elide(p.path), p),
    todo: 'Check that it is a job file. Move blocks that several jobs need into a file of their own.',
    ...(p.path !== undefined && { found: elide(p.path) }),
  }),
})
