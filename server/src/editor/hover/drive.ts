import { code, headed, joined, type Markdown, md, paragraphs, table } from '../../areas/common/markdown.ts'
import type { Row } from '../../areas/common/view.ts'
import { areas } from '../../areas/index.ts'
import { type Block, childrenOf } from '../../job/model.ts'
import type { Lookup } from '../../store/lookup.ts'
import { findKind } from '../../vocabulary/index.ts'
import { formatValue } from './format-value.ts'

/** A drive at a glance: how it stands, what it is made of, and how its parts stand. */
export function driveMarkdown(lookup: Lookup): Markdown | undefined {
  const { block: drive, from } = lookup
  const views = areas.flatMap(({ views }) => views).filter(({ inDrive }) => inDrive)
  const own = views.flatMap(({ on, inDrive }) => (on === 'drive' && inDrive ? inDrive(lookup) : []))
  const ofParts = views.flatMap(({ on, inDrive }) =>
    childrenOf(drive, on).flatMap((part) => inDrive?.(from(part)) ?? []),
  )
  const rows: readonly Row[] = [
    ...own,
    ...partRow(drive, 'shaft', ['diameter', 'length', 'material'], lookup),
    ...partRow(drive, 'motor', ['power', 'speed', 'voltage'], lookup),
    ...ofParts,
  ]
  return rows.length === 0
    ? undefined
    : paragraphs(md`**${headed('Drive', drive.name)}**`, table(['part', ''], rows))
}

/** What the job says of a part, in a line. */
function partRow(drive: Block, kind: string, names: readonly string[], lookup: Lookup): readonly Row[] {
  return childrenOf(drive, kind).flatMap((part): Row[] => {
    const values = names.flatMap((name) => {
      const value = part.facts.get(name)
      const fact = findKind(kind)?.facts[name]
      return value && fact ? [formatValue(value, fact.shape, lookup.system)] : []
    })
    return values.length === 0 ? [] : [[headed(part.kind, part.name, code), joined(values, '; ')]]
  })
}
