import {
  type TypeHierarchyItem,
  TypeHierarchyPrepareRequest,
  TypeHierarchySubtypesRequest,
  TypeHierarchySupertypesRequest,
} from 'vscode-languageserver'
import { locate, rangeOf } from '../job/document.ts'
import { nameOf } from '../job/model.ts'
import { type FileAround, filesAround } from './around.ts'
import { type AskedOfAll, feature, workspaceFeature } from './feature.ts'
import { symbolKind } from './symbol-kinds.ts'
import { type Relative, relativeAt, subtypes, supertype } from './type-hierarchy.ts'
import { keyOf } from './uri.ts'

const capability = { typeHierarchyProvider: true }

const shown = ({ block, in: { uri, file } }: Relative): TypeHierarchyItem => ({
  name: block.name ?? block.path,
  kind: symbolKind(block.kind),
  detail: block.name === undefined ? file.path : `${block.kind}, ${file.path}`,
  uri,
  range: rangeOf(file.document, { section: block.section, span: block.node.span }),
  selectionRange: rangeOf(file.document, nameOf(block)),
})

export const typeHierarchyFeature = feature(
  TypeHierarchyPrepareRequest.type,
  capability,
  async ({ params, workspace, open, token }) => {
    const around = await filesAround(workspace, token)
    const found = relativeTo({ uri: open.uri, range: { start: params.position } }, workspace, around)
    return found ? [shown(found)] : null
  },
)

export const supertypesFeature = workspaceFeature(
  TypeHierarchySupertypesRequest.type,
  capability,
  ({ params, workspace, token }) =>
    relatives(params.item, { workspace, token }, (...asked) => [supertype(...asked) ?? []].flat()),
)

export const subtypesFeature = workspaceFeature(
  TypeHierarchySubtypesRequest.type,
  capability,
  ({ params, workspace, token }) => relatives(params.item, { workspace, token }, subtypes),
)

async function relatives(
  { uri, selectionRange }: TypeHierarchyItem,
  { workspace, token }: Pick<AskedOfAll<unknown>, 'workspace' | 'token'>,
  of: typeof subtypes,
): Promise<TypeHierarchyItem[] | null> {
  const around = await filesAround(workspace, token)
  const found = relativeTo({ uri, range: selectionRange }, workspace, around)
  if (!found) return null
  const view = { analysis: workspace.analysis, file: found.in.file }
  return of(view, found.block, around).map(shown)
}

/** The block whose name, or a word for it, stands at the place. */
function relativeTo(
  {
    uri,
    range: { start },
  }: { readonly uri: string; readonly range: Pick<TypeHierarchyItem['range'], 'start'> },
  { analysis }: Pick<AskedOfAll<unknown>['workspace'], 'analysis'>,
  around: readonly FileAround[],
): Relative | undefined {
  const file = around.find((of) => keyOf(of.uri) === keyOf(uri))?.file
  const at = file && locate(file.document, start)
  return file && at && relativeAt({ analysis, file }, at, around)
}
