import {
  ResponseError,
  type TypeHierarchyItem,
  TypeHierarchyPrepareRequest,
  TypeHierarchySubtypesRequest,
  TypeHierarchySupertypesRequest,
} from 'vscode-languageserver'
import { locate, rangeOf } from '../job/document.ts'
import { nameOf } from '../job/model.ts'
import { filesAround, filesAroundOpen } from './around.ts'
import { type AskedOfAll, featureAt, workspaceFeature } from './feature.ts'
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

export const typeHierarchyFeature = featureAt(
  TypeHierarchyPrepareRequest.type,
  capability,
  async (asked, at) => {
    const around = await filesAroundOpen(asked)
    if (around instanceof ResponseError) return around
    const found = relativeAt(asked.workspace.viewOf(asked.open), at, around)
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

/** Relatives of the block whose name stands at the place of an item that was given before. */
async function relatives(
  { uri, selectionRange }: TypeHierarchyItem,
  { workspace, token }: Pick<AskedOfAll<unknown>, 'workspace' | 'token'>,
  of: typeof subtypes,
): Promise<TypeHierarchyItem[] | null> {
  const { analysis } = workspace
  const around = await filesAround(workspace, token)
  const file = around.find((each) => keyOf(each.uri) === keyOf(uri))?.file
  const at = file && locate(file.document, selectionRange.start)
  const found = at && relativeAt({ analysis, file }, at, around)
  return found ? of({ analysis, file: found.in.file }, found.block, around).map(shown) : null
}
