import { ProtocolRequestType } from 'vscode-languageserver'
import { locate } from '../../job/document.ts'
import type { Block } from '../../job/model.ts'
import type { View } from '../../job/per-section.ts'
import { type PlanParams, type PlanResult, planRequest } from '../client-requests.ts'
import { workspaceFeature } from '../feature.ts'
import { drivesOf, plannedAt, plannedBy, planSheet } from './plan.ts'

/** For an editor that keeps a plan in view: it is told once when the plan may have changed, and then asks again. */
export const planFeature = workspaceFeature(
  new ProtocolRequestType<PlanParams, PlanResult, never, void, void>(planRequest),
  {},
  async ({ params, workspace, follow, findingsOf, today }): Promise<PlanResult> => {
    const { uri } = params.textDocument
    const open = await workspace.wholeFile(uri)
    follow(uri, open)
    if (!open) return { type: 'no-file' }
    const view = workspace.viewOf(open)
    const planned = requestedBlock(params, view)
    if (!planned) return { type: 'no-such-drive', drives: drivesOf(view).map(({ path }) => path) }
    const text = planSheet(view, planned, { findings: findingsOf(open), today })
    return { type: 'plan', path: planned.path, text }
  },
)

/** Of a place outside any drive, the only drive is meant. */
function requestedBlock({ path, position }: PlanParams, view: View): Block | undefined {
  if (path !== undefined) return plannedBy(view, path)
  const at = position && locate(view.file.document, position)
  const planned = at && plannedAt(view, at.section, at.offset)
  const drives = drivesOf(view)
  return planned ?? (drives.length === 1 ? drives[0] : undefined)
}
