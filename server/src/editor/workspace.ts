import { Analysis } from '../job/analysis.ts'
import {
  type Document,
  edit,
  hasSection,
  offsetAt,
  openDocument,
  type Position,
  rangeOf,
  textOf,
} from '../job/document.ts'
import { type JobFile, linkFile } from '../job/files.ts'
import type { Place } from '../job/model.ts'
import type { Host } from './host.ts'
import { folderOf, isWithin, keyOf, uriOf } from './uri.ts'

export interface Range {
  readonly start: Position
  readonly end: Position
}

/** A text an editor has open. `uri` as the editor spells it; no `version` when the editor gives none. */
export interface OpenFile {
  readonly uri: string
  readonly version: number | undefined
  readonly document: Document
}

/** New text for a range, or for everything. */
export interface Change {
  readonly range?: Range
  readonly text: string
}

interface Link {
  readonly file: JobFile
  readonly root: string | undefined
}

/** Texts as the editor has them, and on disk those that they use. */
export class Workspace {
  readonly analysis = new Analysis()
  readonly #read: Host['read']
  readonly #open = new Map<string, OpenFile>()
  readonly #disk = new Map<string, { readonly root: string; readonly document: Document | undefined }>()
  readonly #links = new Map<string, Link>()
  #folders: readonly string[] = []

  constructor(read: Host['read']) {
    this.#read = read
  }

  get openFiles(): readonly OpenFile[] {
    return [...this.#open.values()]
  }

  setFolders({ added, removed = [] }: { added: readonly string[]; removed?: readonly string[] }): void {
    const key = (uri: string) => keyOf(uri).replace(/\/+$/, '')
    const gone = removed.map(key)
    this.#folders = [...this.#folders.filter((folder) => !gone.includes(folder)), ...added.map(key)]
    this.#changed()
  }

  open(uri: string, version: number, text: string): void {
    this.#open.set(keyOf(uri), { uri, version, document: openDocument(text) })
    this.refresh()
  }

  /** Applies all changes or, where one makes no sense, none. Returns why it does not take them, in words that follow the name of the text:
   * version numbers increase with every change (LSP 3.17), so one that does not comes twice or late, and would spoil the text. */
  change(uri: string, version: number | null | undefined, changes: readonly Change[]): string | undefined {
    const before = this.get(uri)
    if (!before) return 'is not open'
    const held = before.version
    if (typeof version === 'number' && held !== undefined && version <= held)
      return `is at version ${held} already: the change to version ${version} is passed over`
    const document = changes.reduce(changed, before.document)
    this.#open.set(keyOf(uri), { ...before, version: version ?? undefined, document })
    this.#changed()
    return undefined
  }

  close(uri: string): void {
    this.#open.delete(keyOf(uri))
    this.refresh()
  }

  get(uri: string): OpenFile | undefined {
    return this.#open.get(keyOf(uri))
  }

  /** Looks at the files on disk again. */
  refresh(): void {
    for (const [key, { root, document }] of this.#disk) {
      const text = this.#read(uriOf(key), uriOf(root))
      if (text === undefined || !document) this.#disk.delete(key)
      else if (text !== textOf(document)) this.#disk.set(key, { root, document: openDocument(text) })
    }
    this.#changed()
  }

  /** An open file with the files it uses. */
  link({ uri, document }: OpenFile): JobFile {
    return this.#link(uri, document).file
  }

  /** The open files that a change of this one may touch: itself and those that use it. */
  touchedBy(uri: string): readonly OpenFile[] {
    const changed = keyOf(uri)
    return this.openFiles.filter((open) => {
      const { file, root } = this.#link(open.uri, open.document)
      return keyOf(open.uri) === changed || file.used.some((used) => `${root}/${used.path}` === changed)
    })
  }

  /** Where a place stands now, as seen from an open file: in it, or in one that it uses. */
  locate(from: OpenFile, place: Place): { readonly uri: string; readonly range: Range } | undefined {
    const { file, root } = this.#link(from.uri, from.document)
    if (hasSection(from.document, place.section))
      return { uri: from.uri, range: rangeOf(from.document, place) }
    const holder = file.used.find(({ document }) => hasSection(document, place.section))
    if (!holder) return undefined
    const key = `${root}/${holder.path}`
    return { uri: this.#open.get(key)?.uri ?? uriOf(key), range: rangeOf(holder.document, place) }
  }

  #changed(): void {
    this.#links.clear()
    this.analysis.begin()
  }

  #link(uri: string, document: Document): Link {
    const key = keyOf(uri)
    const kept = this.#links.get(key)
    if (kept) return kept
    const root = this.#rootOf(key)
    const path = root === undefined ? key : key.slice(root.length + 1)
    const file = linkFile(path, document, (used) =>
      root === undefined ? undefined : this.#used(`${root}/${used}`, root),
    )
    const link = { file, root }
    this.#links.set(key, link)
    return link
  }

  /** The innermost workspace folder around the file; without one, the folder the file stands in. */
  #rootOf(key: string): string | undefined {
    const around = this.#folders.filter((folder) => isWithin(key, folder))
    return around.toSorted((a, b) => b.length - a.length)[0] ?? folderOf(key)
  }

  #used(key: string, root: string): Document | undefined {
    const open = this.#open.get(key)
    if (open) return open.document
    const kept = this.#disk.get(key)
    if (kept) return kept.document
    const text = this.#read(uriOf(key), uriOf(root))
    const document = text === undefined ? undefined : openDocument(text)
    this.#disk.set(key, { root, document })
    return document
  }
}

function changed(document: Document, { range, text }: Change): Document {
  if (!range) return openDocument(text)
  const from = offsetAt(document, sound(range.start))
  const to = offsetAt(document, sound(range.end))
  return edit(document, Math.min(from, to), Math.max(from, to), text)
}

function sound(position: Position): Position {
  const { line, character } = position
  if (Number.isInteger(line) && Number.isInteger(character) && line >= 0 && character >= 0) return position
  throw new RangeError(`no position in a text: line ${line}, character ${character}`)
}
