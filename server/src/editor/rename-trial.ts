import { Analysis } from '../job/analysis.ts'
import { type Document, edit, hasSection, positionOf, startOf } from '../job/document.ts'
import { type JobFile, linkFile } from '../job/files.ts'
import type { Place } from '../job/model.ts'
import { referencesOf } from '../job/references.ts'
import type { FileAround } from './around.ts'
import type { FoundMention } from './references.ts'

interface Trial {
  readonly mentions: readonly FoundMention[]
  readonly to: string
  readonly around: readonly FileAround[]
}

interface Change {
  readonly from: number
  readonly to: number
}

/** Writes the new name into copies of the files and reads them: every word has to stand for what it did before. Returns what would not, in words.
 * So a name that is taken somewhere, or hides another, is found however far away. */
export function triedOut(analysis: Analysis, { mentions, to, around }: Trial): string | undefined {
  const changes = new Map<Document, Change[]>()
  for (const {
    at,
    in: { file },
  } of mentions) {
    const start = startOf(file.document, at.section) ?? 0
    const list = changes.get(file.document) ?? []
    if (list.length === 0) changes.set(file.document, list)
    list.push({ from: start + at.span.start, to: start + at.span.end })
  }
  const texts = new Map(
    [...changes].map(([document, list]) => [
      document,
      list.toReversed().reduce((text, { from, to: end }) => edit(text, from, end, to), document),
    ]),
  )
  /** Where an offset has gone. */
  const moved = (document: Document, offset: number): number =>
    (changes.get(document) ?? [])
      .filter(({ from }) => from < offset)
      .reduce((sum, change) => sum + to.length - (change.to - change.from), offset)

  const tried = new Analysis()
  tried.begin()
  // Those that are written to first: there the cause is seen, not what comes of it.
  const writtenTo = around.filter(({ file }) => texts.has(file.document))
  const others = around.filter(
    ({ file }) => !texts.has(file.document) && file.used.some(({ document }) => texts.has(document)),
  )
  for (const { file } of [...writtenTo, ...others]) {
    const text = (of: Document) => texts.get(of) ?? of
    const renamed = linkFile(file.path, text(file.document), (path) => {
      const used = file.used.find((other) => other.path === path)
      return used && text(used.document)
    })
    const before = meaningOf(analysis, file, moved)
    const after = meaningOf(tried, renamed, (_document, offset) => offset)
    const other = [...before].find(([at, means]) => after.get(at)?.means !== means.means)?.[1]
    if (other)
      return `${other.words} in ${file.path}, line ${other.line}, would stand for something else then.`
    if (isWorse(problemsOf(analysis, file), problemsOf(tried, renamed)) || before.size !== after.size)
      return `${file.path} would not be read as it is now: ${to} means something else there.`
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
  moved: (document: Document, offset: number) => number,
): ReadonlyMap<number, Meaning> {
  const files = [file, ...file.used]
  const where = ({ section, span }: Place): string => {
    const holder = files.find(({ document }) => hasSection(document, section))
    if (!holder) return 'elsewhere'
    const { path, document } = holder
    return `${path} ${moved(document, (startOf(document, section) ?? 0) + span.start)}`
  }
  const { document } = file
  return new Map(
    document.sections.flatMap((section) =>
      referencesOf({ analysis, file }, section).map(({ at, named }): [number, Meaning] => [
        moved(document, (startOf(document, section) ?? 0) + at.span.start),
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
