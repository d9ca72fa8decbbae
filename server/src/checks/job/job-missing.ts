import { isUse } from '../../job/bind.ts'
import { ofKind } from '../../job/model.ts'
import { atHead, fileCheck, theLanguage } from '../check.ts'
import { blank, insert } from '../fix-text.ts'

const todo = 'Write a `job` block with the vessel and the status, and a `drive` block for each shaft line.'

export default fileCheck({
  id: 'job/job-missing',
  severity: 'error',
  title: 'File without a job',
  why: 'An empty file has nothing that could be checked, so it must not pass as a job without faults. A file with a drive and no `job` counts as a library of parts: it is not asked for missing facts. One finding says so, as information.',
  source: theLanguage,
  fires: `# nothing yet
#<- empty`,
  quiet: `job "Launch" {
  vessel: "Launch 07"
  status: draft
}`,
  file: ({ blocks, sections }) => {
    const [first] = sections
    // What cannot be read is an error of its own.
    const isEmpty = sections.every(
      ({ parsed: { tree, problems } }) => problems.length === 0 && tree.items.every(isUse),
    )
    if (isEmpty && first)
      return [
        {
          at: { section: first, span: { start: 0, end: 0 } },
          message: 'The file is empty: there is no job to check.',
          todo,
        },
      ]
    const [drive] = ofKind(blocks, 'drive')
    return !drive || ofKind(blocks, 'job').length > 0
      ? []
      : [
          atHead(drive, {
            severity: 'information',
            message:
              'The file has no `job` block, so it counts as a library: missing facts are not asked for.',
            todo: 'Add a `job` block with the vessel and the status, unless other files use this one as a library.',
          }),
        ]
  },
  fixes: (_finding, { file }) => {
    const [first] = file.document.sections
    return first
      ? [
          {
            title: 'Add a job',
            edits: [insert(first, 0, `job {\n  vessel: ${blank}\n  status: draft\n}\n\n`)],
            preferred: true,
            leaves: ['job/fact-missing', 'job/block-missing'],
          },
        ]
      : []
  },
})
