import {
  ResponseError,
  type TypeHierarchyItem,
  TypeHierarchyPrepareRequest,
  TypeHierarchySubtypesRequest,
  TypeHierarchySupertypesRequest,
} from 'vscode-languageserver'
import { locate, rangeOf } from '../../job/document.ts'
import { headingOf } from '../../job/model.ts'
import { featureAt, type WorkspaceRequestContext, workspaceFeature } from '../feature.ts'
import { filesAround, filesAroundOpen } from './around.ts'
import { symbolKind } from './symbol-kinds.ts'
import { type Relative, relativeAt, subtypes, supertype } from './type-hierarchy.ts'

const capability = { typeHierarchyProvider: true }

const shown = ({ block, in: { uri, file } }: Relative): TypeHierarchyItem => ({
  name: block.name ?? block.path,
  kind: symbolKind(block.kind),
  detail: block.name === undefined ? file.path : `${block.kind}, ${file.path}`,
  uri,
  range: rangeOf(file.document, { section: block.section, span: block.node.span }),
  selectionRange: rangeOf(file.document, headingOf(block)),
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
  async (asked) => {
    const { around, found } = await relativeOf(asked)
    const view = found && { analysis: around.analysis, file: found.in.file }
    const other = view && supertype(view, found.block, around)
    return found ? [other ?? []].flat().map(shown) : null
  },
)

export const subtypesFeature = workspaceFeature(
  TypeHierarchySubtypesRequest.type,
  capability,
  async (asked) => {
    const { around, found } = await relativeOf(asked)
    if (!found) return null
    const items: TypeHierarchyItem[] = []
    for await (const relative of subtypes(found.block, around)) items.push(shown(relative))
    return items
  },
)

/** The block whose name stands at the place of an item that was given before. */
async function relativeOf({
  params: { item },
  workspace,
  token,
  progress,
}: WorkspaceRequestContext<{ readonly item: TypeHierarchyItem }>) {
  const around = await filesAround(workspace, { token, progress })
  const file = around.at(item.uri)?.file
  const at = file && locate(file.document, item.selectionRange.start)
  return { around, found: at && relativeAt({ analysis: around.analysis, file }, at, around) }
}
