import { Analysis } from '../job/analysis.ts'
import { type Document, edit, hasSection, positionOf, startOf } from '../job/document.ts'
import { type JobFile, linkFile } from '../job/files.ts'
import type { Place } from '../job/model.ts'
import { referencesOf } from '../job/references.ts'
import { once } from '../syntax/once.ts'
import type { FilesAround, Known } from './around.ts'
import { mayMention, mentionsOf } from './may-mention.ts'

/** A stretch of a text that the new name replaces. */
export interface Written {
  readonly from: number
  readonly to: number
}

interface Trial {
  /** By the key of each file that is written to, in the order of its text. */
  readonly changes: ReadonlyMap<string, readonly Written[]>
  readonly from: string
  readonly to: string
  readonly around: FilesAround
}

/** Writes the new name into copies of the files and reads them: every word has to stand for what it did before. Returns what would not, in words.
 * So a name that is taken somewhere, or hides another, is found however far away. */
export async function triedOut({ changes, from, to, around }: Trial): Promise<string | undefined> {
  const changesOf = (file: JobFile, root: string | undefined): readonly Written[] =>
    changes.get(root === undefined ? file.path : `${root}/${file.path}`) ?? []
  /** Where an offset has gone. */
  const moved = (list: readonly Written[], offset: number): number =>
    list
      .filter((change) => change.from < offset)
      .reduce((sum, change) => sum + to.length - (change.to - change.from), offset)
  const renamed = new WeakMap<Document, Document>()
  const textOf = (document: Document, list: readonly Written[]): Document => {
    if (list.length === 0) return document
    const known = renamed.get(document)
    if (known) return known
    const text = list.toReversed().reduce((of, change) => edit(of, change.from, change.to, to), document)
    renamed.set(document, text)
    return text
  }

  const tried = new Analysis()
  const users = around.usersOf(changes.keys())
  const isClean = once((known: Known): boolean => {
    const { key, text } = known
    return mentionsOf(text, from) === (changes.get(key)?.length ?? 0) && !mayMention(text, [to])
  })
  /** Where both names are rare, a file without either says the same as before: whatever it uses has every word of the one replaced by the other. */
  const isSame = (known: Known): boolean => [...around.usedBy(known)].every(isClean)
  // Those that are written to first: there the cause is seen, not what comes of it.
  const turns = [
    (known: Known) => changes.has(known.key),
    (known: Known) => !changes.has(known.key) && users.has(known.key) && !isSame(known),
  ]
  for (const isTurn of turns)
    for await (const { uri, file } of around.files(isTurn)) {
      const root = around.rootOf(uri)
      const before = meaningOf(around.analysis, file, (of, offset) => moved(changesOf(of, root), offset))
      const then = linkFile(file.path, textOf(file.document, changesOf(file, root)), (path) => {
        const used = file.used.find((other) => other.path === path)
        return used && textOf(used.document, changesOf(used, root))
      })
      const after = meaningOf(tried, then, (_file, offset) => offset)
      const other = [...before].find(([at, means]) => after.get(at)?.means !== means.means)?.[1]
      if (other) return `${other.words} in ${file.path}, line ${other.line}, would then mean something else.`
      if (isWorse(problemsOf(around.analysis, file), problemsOf(tried, then)) || before.size !== after.size)
        return `${file.path} would change its meaning: ${to} means something else there.`
    }
  return undefined
}

interface Meaning {
  readonly means: string
  readonly words: string
  readonly line: number
}

/** What each word of a file stands for, by where the two stand. */
function meaningOf(
  analysis: Analysis,
  file: JobFile,
  moved: (file: JobFile, offset: number) => number,
): ReadonlyMap<number, Meaning> {
  const files = [file, ...file.used]
  const where = ({ section, span }: Place): string => {
    const holder = files.find(({ document }) => hasSection(document, section))
    if (!holder) return 'elsewhere'
    const { path, document } = holder
    return `${path} ${moved(holder, (startOf(document, section) ?? 0) + span.start)}`
  }
  const { document } = file
  return new Map(
    document.sections.flatMap((section) =>
      referencesOf({ analysis, file }, section).map(({ at, named }): [number, Meaning] => [
        moved(file, (startOf(document, section) ?? 0) + at.span.start),
        {
          means: where(named),
          words: section.text.slice(at.span.start, at.span.end),
          line: positionOf(document, section, at.span.start).line + 1,
        },
      ]),
    ),
  )
}

/** Types of the problems of a file, each as often as it is there. */
const problemsOf = (analysis: Analysis, file: JobFile): readonly string[] =>
  file.document.sections.flatMap((section) =>
    analysis.bound(file, section).problems.map(({ problem }) => problem.type),
  )

/** Whether there is a problem more of some type. One less is welcome: a name that stood twice. */
function isWorse(before: readonly string[], after: readonly string[]): boolean {
  const left = [...before]
  return after.some((type) => {
    const at = left.indexOf(type)
    if (at >= 0) left.splice(at, 1)
    return at < 0
  })
}
