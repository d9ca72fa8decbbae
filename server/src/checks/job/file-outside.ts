import { elide } from '../../quantity/elide.ts'
import { problemCheck, theLanguage } from '../check.ts'

export default problemCheck({
  id: 'job/file-outside',
  problem: 'use-outside',
  severity: 'error',
  title: 'File outside the folder',
  why: 'A job file never reaches outside one folder: the one the editor has open around it, or on the command line the one the command is run in; where it lies in neither, its own.',
  source: theLanguage,
  fires: `use "../../secret.wright"
#   ^^^^^^^^^^^^^^^^^^^^^ leads out`,
  quiet: `# nothing is used`,
  words: (p) => ({
    message: `${elide(p.path)} leads out of the one folder that a job may use files of.`,
    todo: 'That is the folder the editor has open around this file, on the command line the folder the command is run in, and where this file lies in neither, its own. Keep both files below it, and write the path from this file.',
    found: elide(p.path),
  }),
})
