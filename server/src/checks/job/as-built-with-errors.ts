import { at, type Finding, fileCheck, theLanguage } from '../check.ts'
import { applyConcessions } from '../concessions.ts'
import { replace } from '../fix-text.ts'
import { missingChecks } from '../missing.ts'

/** What is missing, and a drive that was not read, say so themselves. */
const saysSo: readonly string[] = [...missingChecks, 'alignment/no-reading-within']

const isOpen = ({ check, severity, beforeAsBuilt }: Finding): boolean =>
  !saysSo.includes(check) && (severity === 'error' || beforeAsBuilt === true)

export default fileCheck({
  id: 'job/as-built-with-errors',
  severity: 'error',
  followsStatus: true,
  title: 'As-built with open errors',
  why: 'As-built means that the install is as the file says, and that the file is right. So every error must be corrected or accepted first. So must every warning that leaves the alignment in doubt: a soft foot, or a move with an unexpected effect.',
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
    const open = applyConcessions(view).filter(isOpen)
    if (open.length === 0) return []
    const isError = open.every(({ severity }) => severity === 'error')
    const what = isError ? 'error' : 'finding'
    const [errors, are, them] =
      open.length === 1 ? [`1 ${what}`, 'is', 'it'] : [`${open.length} ${what}s`, 'are', 'them']
    return [
      at(status, {
        message: `The job is marked as-built, but ${errors} ${are} open.`,
        todo: `Correct ${them}, have ${them} accepted by a concession, or set the status back to issued.`,
        found: errors,
        limit: 'no error open',
        related: open.slice(0, 10).map((finding) => ({ at: finding.at, message: finding.message })),
      }),
    ]
  },
  fixes: ({ at }) => [{ title: 'Set the status back to issued', edits: [replace(at, 'issued')] }],
})
