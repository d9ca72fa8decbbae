import { memoizeByIdentity } from '../../common/memoize-by-identity.ts'
import { keyOf } from '../../host/uri.ts'
import { Analysis } from '../../job/analysis.ts'
import { type Document, edit, hasSection, positionOf, startOf } from '../../job/document.ts'
import { type JobFile, linkFile } from '../../job/files.ts'
import type { Place, Section } from '../../job/model.ts'
import type { View } from '../../job/per-section.ts'
import { referencesOf } from '../../job/references.ts'
import type { FilesAround, KnownFile } from '../navigation/around.ts'
import { mayMention, mentionsOf } from '../navigation/may-mention.ts'

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
  const isReplacedIn = (code: string, key: string): boolean =>
    mentionsOf(code, from) === (changes.get(key)?.length ?? 0) && !mayMention(code, [to])
  const isClean = memoizeByIdentity(
    ({ key, text }: KnownFile): boolean =>
      isReplacedIn(text, key) || isReplacedIn(withoutComments(text), key),
  )
  /** Files that, like all they use, have every word of the one name replaced by the other, which was not there. Their sections without the name
   * mean the same as before if those with it do. */
  const clean = new Set(
    [...around.known]
      .filter((known) => users.has(known.key) && [...around.usedBy(known)].every(isClean))
      .map(({ key }) => key),
  )
  const isWritten = ({ key }: KnownFile) => changes.has(key)
  let isSame = true
  /** Those that are written to first: there the cause is seen, not what comes of it. */
  const turns: readonly { readonly of: (known: KnownFile) => boolean; readonly isInFull?: true }[] = [
    { of: isWritten },
    { of: (known) => !isWritten(known) && users.has(known.key) && !clean.has(known.key) },
    { of: ({ key }) => !isSame && clean.has(key), isInFull: true },
  ]
  for (const { of, isInFull } of turns)
    for await (const { uri, file } of around.files(of)) {
      const root = around.rootOf(uri)
      const then = linkFile(file.path, textOf(file.document, changesOf(file, root)), (path) => {
        const used = file.used.find((other) => other.path === path)
        return used && textOf(used.document, changesOf(used, root))
      })
      const all = file.document.sections
      // Where sections are cut as before, each is compared with the one in its place.
      const isShort = !isInFull && clean.has(keyOf(uri)) && all.length === then.document.sections.length
      const isCompared = (_: Section, i: number) => !isShort || mayMention(all[i]?.text ?? '', [from])
      const sections = all.filter(isCompared)
      const sectionsThen = then.document.sections.filter(isCompared)
      const before = meaningOf({ analysis: around.analysis, file }, sections, (of, offset) =>
        moved(changesOf(of, root), offset),
      )
      const after = meaningOf({ analysis: tried, file: then }, sectionsThen, (_file, offset) => offset)
      const other = [...before].find(([at, means]) => after.get(at)?.means !== means.means)?.[1]
      if (other) return `${other.words} in ${file.path}, line ${other.line}, would then mean something else.`
      const problems = problemsOf({ analysis: around.analysis, file }, sections)
      const problemsThen = problemsOf({ analysis: tried, file: then }, sectionsThen)
      if (isWorse(problems, problemsThen) || before.size !== after.size)
        return `${file.path} would change its meaning: ${to} means something else there.`
      if (problems.length !== problemsThen.length) isSame = false
    }
  return undefined
}

/** A # behind no quote begins a comment. */
const withoutComments = (text: string): string => text.replace(/(?<![^\r\n])([^"#\r\n]*)#[^\r\n]*/g, '$1')

interface Meaning {
  readonly means: string
  readonly words: string
  readonly line: number
}

/** What each word of these sections of a file stands for, by where the two stand. */
function meaningOf(
  view: View,
  sections: readonly Section[],
  moved: (file: JobFile, offset: number) => number,
): ReadonlyMap<number, Meaning> {
  const { file } = view
  const files = [file, ...file.used]
  const where = ({ section, span }: Place): string => {
    const holder = files.find(({ document }) => hasSection(document, section))
    if (!holder) return 'elsewhere'
    const { path, document } = holder
    return `${path} ${moved(holder, (startOf(document, section) ?? 0) + span.start)}`
  }
  const { document } = file
  return new Map(
    sections.flatMap((section) =>
      referencesOf(view, section).map(({ at, named }): [number, Meaning] => [
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

/** Types of the problems of these sections, each as often as it is there. */
const problemsOf = ({ analysis, file }: View, sections: readonly Section[]): readonly string[] =>
  sections.flatMap((section) => analysis.bound(file, section).problems.map(({ problem }) => problem.type))

/** Whether there is a problem more of some type. One less is welcome: a name that stood twice. */
function isWorse(before: readonly string[], after: readonly string[]): boolean {
  const left = [...before]
  return after.some((type) => {
    const at = left.indexOf(type)
    if (at >= 0) left.splice(at, 1)
    return at < 0
  })
}
