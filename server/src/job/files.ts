import { isUse, type Located } from './bind.ts'
import { type Document, soleBlockOf } from './document.ts'
import type { Refusal } from './file-text.ts'
import type { BindingProblem, Place } from './model.ts'

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

interface Use {
  readonly at: Place
  readonly path: string
  /** Undefined when it leads out of the root. */
  readonly target: string | undefined
}

/** The `use` lines of a text that stands at a path. */
export const usesOf = (path: string, document: Document): readonly Use[] =>
  document.sections.flatMap((section) => {
    if (soleBlockOf(section)) return []
    return section.parsed.tree.items.flatMap((item) => {
      const part = isUse(item) ? item.entries[0]?.parts[1] : undefined
      return part?.type === 'text'
        ? [{ at: { section, span: part.span }, path: part.text, target: resolvePath(path, part.text) }]
        : []
    })
  })

/** Follows the `use` lines of a file. `open` gives the document of a path from the root; it decides what may be read. */
export function linkFile(
  path: string,
  document: Document,
  open: (path: string) => Document | undefined,
): JobFile {
  const files = new Map<string, { readonly file: Building; readonly uses: readonly Use[] }>()
  const add = (at: string, text: Document) => {
    const file: Building = { path: at, document: text, used: [], problems: [] }
    files.set(at, { file, uses: usesOf(at, text) })
    return file
  }
  const root = add(path, document)
  const [first] = document.sections
  if (document.refusal && first)
    root.problems.push({ at: { section: first, span: { start: 0, end: 0 } }, problem: document.refusal })
  const refused = new Map<string, Refusal>()
  // A map also gives what is added to it while it is gone through.
  for (const { uses } of files.values())
    for (const { target } of uses) {
      if (target === undefined || files.has(target) || refused.has(target)) continue
      const text = open(target)
      if (text?.refusal) refused.set(target, text.refusal)
      else if (text) add(target, text)
    }
  for (const { file, uses } of files.values()) {
    const around = new Set<JobFile>([file])
    for (const { path: of } of around)
      for (const { target } of files.get(of)?.uses ?? []) {
        const next = target === undefined ? undefined : files.get(target)
        if (next) around.add(next.file)
      }
    around.delete(file)
    for (const each of around) file.used.push(each)
    for (const { at, path: written, target } of uses)
      if (target === undefined) file.problems.push({ at, problem: { type: 'use-outside', path: written } })
      else if (!files.has(target)) {
        const refusal = refused.get(target) ?? { type: 'use-missing' as const }
        file.problems.push({ at, problem: { ...refusal, path: written } })
      }
  }
  for (const { file, uses } of files.values())
    for (const { at, path: written, target } of uses)
      if (target === file.path || files.get(target ?? '')?.file.used.includes(file))
        file.problems.push({ at, problem: { type: 'use-loop', path: written } })
  return root
}

type Building = JobFile & { readonly used: JobFile[]; readonly problems: Located<BindingProblem>[] }
