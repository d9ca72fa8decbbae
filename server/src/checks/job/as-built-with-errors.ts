import { at, fileCheck, theLanguage } from '../check.ts'
import { applyConcessions } from '../concessions.ts'
import { replace } from '../fix-text.ts'

export default fileCheck({
  id: 'job/as-built-with-errors',
  severity: 'error',
  title: 'As-built with errors open',
  why: 'As-built says that the install is what the file says and that the file is right. Every error is put right or accepted first.',
  source: theLanguage,
  fires: `job "Launch" {
  vessel: "Launch 07"
  status: as-built
#         ^^^^^^^^ 1 error is open
}
drive main { shaft { diameter: 35 } }`,
  quiet: `job "Launch" {
  vessel: "Launch 07"
  status: as-built
}
drive main { shaft { diameter: 35 mm } }`,
  file: (view) => {
    const status = view.blocks.find((block) => block.kind === 'job')?.facts.get('status')
    if (status?.value !== 'as-built') return []
    const open = applyConcessions(view).filter(({ severity }) => severity === 'error')
    if (open.length === 0) return []
    const [errors, are] = open.length === 1 ? ['1 error', 'is'] : [`${open.length} errors`, 'are']
    return [
      at(status, {
        message: `The job is said to be as-built, but ${errors} ${are} open.`,
        todo: 'Put them right, have them accepted by a concession, or set the status back to issued.',
        found: errors,
        limit: 'no error open',
        related: open.slice(0, 10).map((finding) => ({ at: finding.at, message: finding.message })),
      }),
    ]
  },
  fixes: ({ at }) => [{ title: 'Set the status back to issued', edits: [replace(at, 'issued')] }],
})
