import { elide } from '../../quantity/elide.ts'
import { problemCheck, theLanguage } from '../check.ts'

export default problemCheck({
  id: 'job/file-outside',
  problem: 'use-outside',
  severity: 'error',
  title: 'File outside the folder',
  why: 'A job file never uses files outside one folder: the workspace folder in an editor, or the current folder on the command line. For a file outside that folder, it is the folder of the file. So a job from elsewhere cannot read other files on your computer. A symbolic link is followed only if it leads to a file inside that folder. A hard link looks like any other file in the folder, so it is read: only someone with an account on your computer can make one.',
  source: theLanguage,
  fires: `use "../../secret.wright"
#   ^^^^^^^^^^^^^^^^^^^^^ is outside`,
  quiet: `# nothing is used`,
  words: (p) => ({
    message: `${elide(p.path)} is outside the folder that a job may use.`,
    todo: 'Keep both files in that folder, and write the path from this file. In an editor it is the workspace folder, on the command line the current folder. If this file is in neither, it is its own folder.',
    found: elide(p.path),
  }),
})
