import type { Located } from './bind.ts'
import { isUse } from './bind.ts'
import type { Document } from './document.ts'
import type { BindingProblem } from './model.ts'

/** A job file with the files it uses, each read once. */
export interface JobFile {
  /** Path from the workspace's root, with `/`: `boats/launch.wright`. */
  readonly path: string
  readonly document: Document
  /** Every file it uses, nearest first, those that they use after them. */
  readonly used: readonly JobFile[]
  readonly problems: readonly Located<BindingProblem>[]
}

/** The path that `written` means in the file at `from`, or undefined when it leads out of the root.
 * @example resolvePath('boats/launch.wright', '../parts/bolts.wright') // 'parts/bolts.wright' */
export function resolvePath(from: string, written: string): string | undefined {
  if (/^([/\\]|[A-Za-z]:|[A-Za-z][A-Za-z0-9+.-]*:)/.test(written) || written.includes('\0')) return undefined
  const segments = from.split('/').slice(0, -1)
  for (const segment of written.split(/[/\\]/)) {
    if (segment === '' || segment === '.') continue
    if (segment !== '..') segments.push(segment)
    else if (segments.pop() === undefined) return undefined
  }
  return segments.join('/')
}

/** Follows the `use` lines of a file. `open` gives the document of a path from the root; it decides what may be read. */
export function linkFile(
  path: string,
  document: Document,
  open: (path: string) => Document | undefined,
): JobFile {
  const linked = new Map<string, JobFile>()
  const link = (at: string, doc: Document, above: readonly string[]): JobFile => {
    const problems: Located<BindingProblem>[] = []
    const used: JobFile[] = []
    for (const section of doc.sections) {
      for (const item of section.parsed.tree.items) {
        if (!isUse(item)) continue
        const part = item.entries[0]?.parts[1]
        if (part?.type !== 'text') continue
        const report = (type: 'use-outside' | 'use-missing' | 'use-loop') =>
          problems.push({ at: { section, span: part.span }, problem: { type, path: part.text } })
        const target = resolvePath(at, part.text)
        if (target === undefined) report('use-outside')
        else if (target === at || above.includes(target)) report('use-loop')
        else {
          const known = linked.get(target)
          const text = known ? undefined : open(target)
          const file = known ?? (text && link(target, text, [...above, at]))
          if (file) used.push(file)
          else report('use-missing')
        }
      }
    }
    const all = [...new Set(used.flatMap((file) => [file, ...file.used]))]
    const file = { path: at, document: doc, used: all, problems }
    linked.set(at, file)
    return file
  }
  return link(path, document, [])
}
