import { at, type FileView, type Finding, fileCheck, theLanguage } from '../check.ts'
import { applyConcessions } from '../concessions.ts'
import { replace } from '../fix-text.ts'
import { missingChecks } from '../missing.ts'

/** What is missing, and what else as-built claims, such as a reading, have a finding that says so. */
const isAsBuiltClaim = ({ check }: Finding, { claims }: FileView): boolean =>
  missingChecks.includes(check) || claims.get(check) === 'as-built'

const isOpen = (finding: Finding, view: FileView): boolean =>
  !isAsBuiltClaim(finding, view) && (finding.severity === 'error' || finding.beforeAsBuilt === true)

export default fileCheck({
  id: 'job/as-built-with-errors',
  severity: 'error',
  followsStatus: true,
  claim: {
    from: 'as-built',
    words:
      'No error is open, no foot is soft, no move had an unexpected effect and no date is after today, unless a concession accepts it.',
  },
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
    const open = applyConcessions(view).filter((finding) => isOpen(finding, view))
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
