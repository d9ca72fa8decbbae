import { allChecks } from '../../areas/index.ts'
import { isUse } from '../../job/bind.ts'
import { type JobFile, resolvePath } from '../../job/files.ts'
import type { Place } from '../../job/model.ts'
import { findKind } from '../../vocabulary/index.ts'

/** A word that leads to a file, by its path from the root, or to the page of a check. */
export type Link = { readonly at: Place } & ({ readonly path: string } | { readonly check: string })

/** The links of a file: the files it uses, and the checks that its concessions are about. */
export function linksOf(file: JobFile): readonly Link[] {
  const used = new Set(file.used.map(({ path }) => path))
  return file.document.sections.flatMap((section) =>
    section.parsed.tree.items.flatMap((item): Link[] => {
      if (isUse(item)) {
        const part = item.entries[0]?.parts[1]
        const path = part?.type === 'text' ? resolvePath(file.path, part.text) : undefined
        if (part?.type !== 'text' || path === undefined || !used.has(path)) return []
        return [{ at: { section, span: { start: part.span.start + 1, end: part.span.end - 1 } }, path }]
      }
      const [id] = item.type === 'block' ? item.heading : []
      const isAboutCheck = item.type === 'block' && findKind(item.kind.text)?.heading === 'check'
      if (!isAboutCheck || id?.type !== 'word' || !allChecks.some((check) => check.id === id.text)) return []
      return [{ at: { section, span: id.span }, check: id.text }]
    }),
  )
}
