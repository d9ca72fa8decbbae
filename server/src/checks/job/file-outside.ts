import { elide } from '../../quantity/elide.ts'
import { problemCheck, theLanguage } from '../check.ts'

export default problemCheck({
  id: 'job/file-outside',
  problem: 'use-outside',
  severity: 'error',
  title: 'File outside the folder',
  why: 'A job file never reaches outside the folder it is opened in.',
  source: theLanguage,
  fires: `use "../../secret.wright"
#   ^^^^^^^^^^^^^^^^^^^^^ outside`,
  quiet: `# nothing is used`,
  words: (p) => ({
    message: `${elide(p.path)} leads outside the folder that is open.`,
    todo: 'Keep shared files inside the folder, and write the path from this file.',
    found: elide(p.path),
  }),
})
