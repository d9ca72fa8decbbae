import type { FileRead, Host, UnreadFolder } from '../../host/host.ts'
import {
  folderAsOf,
  folderKey,
  folderOf,
  foldersAround,
  isSearched,
  isWholeDisk,
  isWithin,
  keyOf,
  uriOf,
} from '../../host/uri.ts'
import { Analysis } from '../../job/analysis.ts'
import {
  type Document,
  documentFrom,
  edit,
  firstLineOf,
  hasSection,
  offsetAt,
  openDocument,
  type Position,
  rangeOf,
} from '../../job/document.ts'
import { type JobFile, linkFile } from '../../job/files.ts'
import type { Place, Section } from '../../job/model.ts'
import type { View } from '../../job/per-section.ts'
import { coalesced } from './coalesced.ts'
import { Disk } from './disk.ts'
import { FileTexts } from './file-texts.ts'
import { overlap } from './overlap.ts'

export interface Range {
  readonly start: Position
  readonly end: Position
}

/** A text an editor has open. `uri` as the editor spells it; no `version` when the editor gives none, or when the text is read from disk. */
export interface OpenFile {
  readonly uri: string
  readonly version: number | undefined
  readonly document: Document
}

/** Where a section begins. */
export interface SectionStart {
  readonly uri: string
  readonly line: number
}

/** New text for a range, or for everything. */
export interface Change {
  readonly range?: Range
  readonly text: string
}

/** The job files of the folders. */
interface Listed {
  readonly uris: readonly string[]
  readonly keys: readonly string[]
  /** Key of every folder around one of them. */
  readonly folders: ReadonlySet<string>
}

interface Link {
  readonly file: JobFile
  readonly root: string | undefined
  /** Key of every file that it or one that it uses names, whether there is such a file or not. */
  readonly named: ReadonlySet<string>
}

/** Texts as the editor has them, and on disk those that they use. */
export class Workspace {
  readonly analysis = new Analysis()
  readonly #read: Host['read']
  readonly #list: Host['list']
  readonly #disk: Disk
  readonly #texts: FileTexts
  readonly #open = new Map<string, OpenFile>()
  readonly #links = new Map<string, Link>()
  #folders: readonly string[] = []
  #listed: Listed | undefined
  #unread: ReadonlyMap<string, string> = new Map()
  readonly #listAgain = coalesced(() => this.#listNow())

  /** Told the URI of a file that others use when its text has come. */
  onText: (uri: string) => void = () => {}
  /** Told the URIs that are in the folders now and were not, and those that were and are not. */
  onListed: (uris: readonly string[]) => void = () => {}
  /** Told of a folder that cannot be read, and could be the last time. */
  onUnread: UnreadFolder = () => {}

  constructor(read: Host['read'], list: Host['list'] = () => [], stamp?: Host['stamp']) {
    this.#read = read
    this.#list = list
    this.#texts = new FileTexts({ read, ...(stamp && { stamp }) })
    this.#disk = new Disk(read, (key) => {
      this.#changed([key])
      this.onText(uriOf(key))
    })
  }

  get openFiles(): readonly OpenFile[] {
    return [...this.#open.values()]
  }

  /** Returns those that are passed over: a whole disk is no folder of jobs. */
  setFolders({
    added,
    removed = [],
  }: {
    readonly added: readonly string[]
    readonly removed?: readonly string[]
  }): readonly string[] {
    const gone = removed.map(folderKey)
    const come = added.filter((uri) => !isWholeDisk(uri)).map(folderKey)
    this.#folders = [...this.#folders.filter((folder) => !gone.includes(folder)), ...come]
    this.#changed()
    return added.filter(isWholeDisk)
  }

  open(uri: string, version: number, text: string): void {
    const key = keyOf(uri)
    this.#open.set(key, { uri, version, document: openDocument(text) })
    this.#changed([key])
  }

  /** Applies all changes. Returns why it does not take them, in words that follow the name of the text: version numbers increase with every change (LSP 3.17), so one that does not comes twice or late, and would spoil the text. */
  change(uri: string, version: number | null | undefined, changes: readonly Change[]): string | undefined {
    const before = this.get(uri)
    if (!before) return 'is not open'
    const current = before.version
    if (typeof version === 'number' && current !== undefined && version <= current)
      return `is already at version ${current}: the change to version ${version} is ignored`
    const document = changes.reduce(changed, before.document)
    this.#open.set(keyOf(uri), { ...before, version: version ?? undefined, document })
    this.#changed([keyOf(uri)])
    return undefined
  }

  close(uri: string): void {
    this.#open.delete(keyOf(uri))
    this.refresh([uri])
  }

  get(uri: string): OpenFile | undefined {
    return this.#open.get(keyOf(uri))
  }

  /** Looks again at files on disk that others use: at these and all inside of them, or at all. Returns the URIs of the former. */
  refresh(uris?: readonly string[]): readonly string[] {
    if (!uris) {
      this.#disk.refresh()
      this.#changed()
      return []
    }
    const keys = uris.map(folderKey)
    const all = [...new Set([...keys, ...this.#within(keys)])]
    this.#texts.changed(all)
    this.#disk.refresh(all)
    this.#changed(all)
    return all.map(uriOf)
  }

  /** URIs of all job files in the folders, as last listed. */
  get paths(): readonly string[] {
    return this.#listed?.uris ?? []
  }

  /** Those that a file may use, by their paths from its root. */
  pathsFor({ uri }: OpenFile): readonly string[] {
    const root = this.#rootOf(keyOf(uri))
    if (root === undefined) return []
    const below = (this.#listed?.keys ?? []).filter((key) => isWithin(key, root))
    return below.map((key) => key.slice(root.length + 1))
  }

  /** Lists the job files in the folders again. One that lies in two folders, of which one is in the other, is listed once. */
  list(): Promise<readonly string[]> {
    return this.#listAgain.run()
  }

  /** What was listed last, once all that was asked to be listed is. */
  async listed(): Promise<readonly string[]> {
    return (await this.#listAgain.underWay()) ?? this.paths
  }

  async #listNow(): Promise<readonly string[]> {
    const unread = new Map<string, string>()
    const found = await Promise.all(
      this.#folders.map((folder) => this.#list(uriOf(folder), (uri, why) => void unread.set(uri, why))),
    )
    for (const [uri, why] of unread) if (!this.#unread.has(uri)) this.onUnread(uri, why)
    this.#unread = unread
    const before = this.#listed
    const now = listedOf(found.flat())
    this.#listed = now
    // Of the first list everything is new, and nothing is known of it yet.
    const changed = before ? differenceOf(before, now) : []
    if (changed.length > 0) this.onListed(changed)
    return now.uris
  }

  /** Whether a file or a folder of this URI can be in the list, or hold what is in it. */
  isSearched(uri: string): boolean {
    const key = folderKey(uri)
    return this.#folders.some(
      (folder) =>
        key === folder ||
        (isWithin(key, folder) &&
          key
            .slice(folder.length + 1)
            .split('/')
            .every(isSearched)),
    )
  }

  /** The keys of what is known to lie inside of these: listed, read, or named by a file that is open. */
  #within(keys: readonly string[]): readonly string[] {
    const wanted = new Set(keys)
    const { folders, keys: all } = this.#listed ?? listedOf([])
    const listed = keys.some((key) => folders.has(key)) ? all : []
    const named = [...this.#links.values()].flatMap((link) => [...link.named])
    return [...listed, ...this.#disk.keys, ...named].filter((key) =>
      foldersAround(key).some((folder) => wanted.has(folder)),
    )
  }

  /** A file as it is open, or as it stands on disk inside the folders; not kept. */
  view(uri: string): OpenFile | undefined | Promise<OpenFile | undefined> {
    const open = this.get(uri)
    const root = this.#rootOf(keyOf(uri))
    if (open || root === undefined) return open
    const viewed = (read: FileRead) =>
      read === undefined ? undefined : { uri, version: undefined, document: documentFrom(read) }
    const read = this.#read(uri, uriOf(root))
    return read instanceof Promise ? read.then(viewed) : viewed(read)
  }

  /** The text of a file on disk, inside the folder around it or inside `root`. Read once as long as it stays the same. */
  textOf(uri: string, root = this.rootOf(uri)): FileRead | Promise<FileRead> {
    return root === undefined ? undefined : this.#texts.read(uri, uriOf(root))
  }

  /** Lets go of all texts but those of these files. */
  keepTexts(keys: ReadonlySet<string>): void {
    this.#texts.keepOnly(keys)
  }

  /** To be called when the editor gives notice of every change on disk. */
  isWatched(): void {
    this.#texts.isTold = true
  }

  /** The key of the folder that the paths in a file start from. */
  rootOf(uri: string): string | undefined {
    return this.#rootOf(keyOf(uri))
  }

  /** A file with the files it uses. */
  link({ uri, document }: OpenFile): JobFile {
    return this.#link(uri, document).file
  }

  /** The same with its meaning. */
  viewOf(open: OpenFile): View {
    return { analysis: this.analysis, file: this.link(open) }
  }

  /** The key of every file that decides what this one means: itself, and those it uses whether they are there or not. */
  keysOf({ uri, document }: OpenFile): ReadonlySet<string> {
    return new Set([keyOf(uri), ...this.#link(uri, document).named])
  }

  /** Resolves once every text that the file uses is there; undefined when all are. */
  whole(open: OpenFile): Promise<void> | undefined {
    const readings = [...this.#link(open.uri, open.document).named].flatMap(
      (key) => this.#disk.reading(key) ?? [],
    )
    // What comes may use more.
    return readings.length > 0 ? Promise.all(readings).then(() => this.whole(open)) : undefined
  }

  /** A file with all that it uses, none of it on its way. */
  async wholeFile(uri: string): Promise<OpenFile | undefined> {
    const viewed = await this.view(uri)
    const seen = this.get(uri) ?? viewed // it may have been opened meanwhile
    const waiting = seen && this.whole(seen)
    if (!waiting) return seen
    await waiting
    return this.wholeFile(uri)
  }

  /** The URI of what a path from the file's root means, as the editor spells it. */
  uriAt({ uri }: OpenFile, path: string): string | undefined {
    const root = this.#rootOf(keyOf(uri))
    if (root === undefined) return undefined
    const key = `${root}/${path}`
    return this.#open.get(key)?.uri ?? uriOf(key)
  }

  /** The open files that a change of these may touch: themselves and those that use one. */
  touchedBy(uris: readonly string[]): readonly OpenFile[] {
    const changed = new Set(uris.map(keyOf))
    return this.openFiles.filter(
      (open) => changed.has(keyOf(open.uri)) || overlap(changed, this.#link(open.uri, open.document).named),
    )
  }

  /** Where a place stands now, as seen from an open file: in it, or in one that it uses. */
  locate(from: OpenFile, place: Place): { readonly uri: string; readonly range: Range } | undefined {
    const holder = this.#holder(from, place.section)
    return holder && { uri: holder.uri, range: rangeOf(holder.document, place) }
  }

  /** Where a section begins now: the same as long as it has not moved. */
  startOf(from: OpenFile, section: Section): SectionStart | undefined {
    const holder = this.#holder(from, section)
    return holder && { uri: holder.uri, line: firstLineOf(holder.document, section) }
  }

  /** The file that has a section. */
  #holder(from: OpenFile, section: Section): Pick<OpenFile, 'uri' | 'document'> | undefined {
    if (hasSection(from.document, section)) return from
    const used = this.link(from).used.find(({ document }) => hasSection(document, section))
    const uri = used && this.uriAt(from, used.path)
    return used && uri !== undefined ? { uri, document: used.document } : undefined
  }

  /** Lets go of what was linked to these files, or of everything. */
  #changed(changed?: readonly string[]): void {
    for (const [key, { named }] of this.#links)
      if (changed?.every((one) => one !== key && !named.has(one)) !== true) this.#links.delete(key)
    this.analysis.begin()
  }

  #link(uri: string, document: Document): Link {
    const key = keyOf(uri)
    const kept = this.#links.get(key)
    if (kept?.file.document === document) return kept
    const root = this.#rootOf(key)
    const named = new Set<string>()
    const path = root === undefined ? key : key.slice(root.length + 1)
    const file = linkFile(path, document, (used) => {
      if (root === undefined) return undefined
      const usedKey = `${root}/${used}`
      named.add(usedKey)
      return this.#open.get(usedKey)?.document ?? this.#disk.document(usedKey, root)
    })
    const link = { file, root, named }
    // A text that is only looked at is not kept.
    if (this.#open.get(key)?.document === document) this.#links.set(key, link)
    return link
  }

  /** The innermost workspace folder around the file; without one, the folder the file stands in. */
  #rootOf(key: string): string | undefined {
    const around = this.#folders
      .map((folder) => folderAsOf(folder, key))
      .filter((folder) => isWithin(key, folder))
    return around.toSorted((a, b) => b.length - a.length)[0] ?? folderOf(key)
  }
}

function changed(document: Document, { range, text }: Change): Document {
  if (!range) return openDocument(text)
  const from = offsetAt(document, range.start)
  const to = offsetAt(document, range.end)
  return edit(document, Math.min(from, to), Math.max(from, to), text)
}

/** Each once, as the last one spells it. */
function listedOf(uris: readonly string[]): Listed {
  const byKey = new Map(uris.map((uri) => [keyOf(uri), uri]))
  const keys = [...byKey.keys()]
  return { uris: [...byKey.values()], keys, folders: new Set(keys.flatMap(foldersAround)) }
}

/** URIs that one of two listings has alone. */
function differenceOf(before: Listed, after: Listed): readonly string[] {
  const had = new Set(before.keys)
  const has = new Set(after.keys)
  const gone = before.keys.filter((key) => !has.has(key))
  return [...gone, ...after.keys.filter((key) => !had.has(key))].map(uriOf)
}
