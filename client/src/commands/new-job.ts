import { window } from 'vscode'
import { blankFrom } from '../blanks.ts'
import { fileNameFor } from '../file-paths.ts'
import { fillInFrom } from '../go-to-blank.ts'
import { askForNewJob } from '../new-job-questions.ts'
import { untitledJob } from '../untitled-job.ts'
import type { Command } from './command.ts'

export const newJob: Command = {
  id: 'shaftwright.newJob',
  run: async (server) => {
    const job = await askForNewJob()
    if (!job) return
    const text = await server.newJob(job)
    const editor = await window.showTextDocument(await untitledJob(fileNameFor(job.vessel), text))
    const first = blankFrom(editor.document.getText(), 0)
    if (first !== undefined) await fillInFrom(editor, first)
  },
}
