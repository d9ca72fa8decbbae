// What is asked of a whole workspace, answered the plain way: every file open, every tree read, every word looked at. Slow, and right.

import { isSamePlace, targetAt } from '../../server/src/editor/navigation/target.ts'
import { renamable } from '../../server/src/editor/rename/rename.ts'
import { type OpenFile, type Range, Workspace } from '../../server/src/editor/workspace/workspace.ts'
import { Analysis } from '../../server/src/job/analysis.ts'
import {
  type Document,
  edit,
  hasSection,
  locate,
  type Position,
  positionOf,
  rangeOf,
  startOf,
} from '../../server/src/job/document.ts'
import { type JobFile, linkFile } from '../../server/src/job/files.ts'
import type { Place } from '../../server/src/job/model.ts'
import { referencesOf } from '../../server/src/job/references.ts'

export interface Mentioned {
  readonly uri: string
  readonly range: Range
}

/** All files of a workspace with their texts, open in the order that they are given in. */
export class FullRead {
  readonly #workspace = new Workspace(() => undefined)

  constructor(folders: readonly string[], files: Iterable<readonly [string, string]>) {
    this.#workspace.setFolders({ added: folders })
    for (const [uri, text] of files) this.#workspace.open(uri, 1, text)
  }

  references(uri: string, position: Position): readonly Mentioned[] {
    const { view, at } = this.#at(uri, position)
    const target = at && targetAt(view, at.section, at.offset)
    return target ? this.#mentions(target.named).map(({ open, place }) => shown(open, place)) : []
  }

  /** Where the new name would be written, and why it may not be; undefined where the word at the place is no name. */
  rename(
    uri: string,
    position: Position,
    to: string,
  ): { readonly places: readonly Mentioned[]; readonly refused: string | undefined } | undefined {
    const { view, at } = this.#at(uri, position)
    const from = at && renamable(view, at.section, at.offset)
    if (!from || 'refused' in from) return undefined
    const written = this.#mentions(from.target.named).flatMap(({ open, place }) => {
      const span = bare(place)
      return place.section.text.slice(span.start, span.end) === from.name
        ? [{ open, place: { section: place.section, span } }]
        : []
    })
    return {
      places: written.map(({ open, place }) => shown(open, place)),
      refused: this.#changed(written, to),
    }
  }

  #at(uri: string, position: Position) {
    const open = this.#workspace.get(uri)
    if (!open) throw new Error(`${uri} is not open`)
    return { view: this.#workspace.viewOf(open), at: locate(open.document, position) }
  }

  #mentions(named: Place): readonly { readonly open: OpenFile; readonly place: Place }[] {
    return this.#workspace.openFiles.flatMap((open) => {
      const view = this.#workspace.viewOf(open)
      return open.document.sections.flatMap((section) => {
        const uses = referencesOf(view, section).filter((reference) => isSamePlace(reference.named, named))
        const places = [...uses.map(({ at }) => at), ...(section === named.section ? [named] : [])]
        return places
          .sort((a, b) => a.span.start - b.span.start)
          .map((place) => ({ open, place: { section, span: place.span } }))
      })
    })
  }

  /** What would stand for something else than before, in the words of the server. */
  #changed(
    written: readonly { readonly open: OpenFile; readonly place: Place }[],
    to: string,
  ): string | undefined {
    const changes = new Map<Document, { readonly from: number; readonly to: number }[]>()
    for (const { open, place } of written) {
      const start = startOf(open.document, place.section) ?? 0
      const list = changes.get(open.document) ?? []
      changes.set(open.document, [...list, { from: start + place.span.start, to: start + place.span.end }])
    }
    const texts = new Map(
      [...changes].map(([document, list]) => [
        document,
        list.toReversed().reduce((text, change) => edit(text, change.from, change.to, to), document),
      ]),
    )
    const moved = (document: Document, offset: number): number =>
      (changes.get(document) ?? [])
        .filter(({ from }) => from < offset)
        .reduce((sum, change) => sum + to.length - (change.to - change.from), offset)
    const tried = new Analysis()
    const files = this.#workspace.openFiles.map((open) => this.#workspace.link(open))
    const isWritten = ({ document }: JobFile) => texts.has(document)
    for (const file of [...files.filter(isWritten), ...files.filter((one) => !isWritten(one))]) {
      const text = (of: Document) => texts.get(of) ?? of
      const then = linkFile(file.path, text(file.document), (path) => {
        const used = file.used.find((other) => other.path === path)
        return used && text(used.document)
      })
      const before = meaningOf(this.#workspace.analysis, file, moved)
      const after = meaningOf(tried, then, (_document, offset) => offset)
      const other = [...before].find(([at, { means }]) => after.get(at)?.means !== means)?.[1]
      if (other) return `${other.words} in ${file.path}, line ${other.line}, would then mean something else.`
      const left = problemsOf(this.#workspace.analysis, file)
      const isWorse = problemsOf(tried, then).some((type) => {
        const at = left.indexOf(type)
        if (at >= 0) left.splice(at, 1)
        return at < 0
      })
      if (isWorse || before.size !== after.size)
        return `${file.path} would change its meaning: ${to} means something else there.`
    }
    return undefined
  }
}

const shown = ({ uri, document }: OpenFile, place: Place): Mentioned => ({
  uri,
  range: rangeOf(document, place),
})

const bare = ({ section, span }: Place) =>
  section.text[span.start] === '"' ? { start: span.start + 1, end: span.end - 1 } : span

interface Meaning {
  readonly means: string
  readonly words: string
  readonly line: number
}

function meaningOf(
  analysis: Analysis,
  file: JobFile,
  moved: (document: Document, offset: number) => number,
): ReadonlyMap<number, Meaning> {
  const where = ({ section, span }: Place): string => {
    const holder = [file, ...file.used].find(({ document }) => hasSection(document, section))
    if (!holder) return 'elsewhere'
    return `${holder.path} ${moved(holder.document, (startOf(holder.document, section) ?? 0) + span.start)}`
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

const problemsOf = (analysis: Analysis, file: JobFile): string[] =>
  file.document.sections.flatMap((section) =>
    analysis.bound(file, section).problems.map(({ problem }) => problem.type),
  )
