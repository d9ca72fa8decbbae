import type { ResponseError } from 'vscode-languageserver'
import { isRevision } from '../../host/revision.ts'
import { isWithin, keyOf, uriOf } from '../../host/uri.ts'
import { Analysis } from '../../job/analysis.ts'
import { type Document, documentFrom, textOf } from '../../job/document.ts'
import { type Refusal, withoutMark } from '../../job/file-text.ts'
import { type JobFile, linkFile, resolvePath } from '../../job/files.ts'
import type { Section } from '../../job/model.ts'
import type { TextRequestContext, WorkspaceRequestContext } from '../feature.ts'
import { changedMeanwhile } from '../transport/changed-meanwhile.ts'
import type { OpenFile, Workspace } from '../workspace/workspace.ts'
import { breather, type Search } from './search.ts'
import { writtenUses } from './written-uses.ts'

export interface FileAround {
  readonly uri: string
  readonly file: JobFile
}

/** What is known of a job file before its tree is read. */
export interface KnownFile {
  readonly uri: string
  readonly key: string
  /** The folder that its paths start from; undefined where it has none. */
  readonly root: string | undefined
  /** Empty where it is not read. */
  readonly text: string
  /** Why it is not read. */
  readonly refusal: Refusal | undefined
  /** Keys of the files that its `use` lines could mean. */
  readonly uses: readonly string[]
  /** Nobody has it open and no folder lists it: it counts only where another one uses it. */
  readonly isOnlyUsed: boolean
}

/** Characters of files used by several others whose trees are kept during a question. */
const cachedCharacters = 2 ** 20

/** Every job file of the workspace as it was at one moment, each once: those that are open, those on disk in its folders, and all that they use.
 * Only their texts are held. The tree of one is read when a question needs it. */
export class FilesAround {
  /** Its own, so that what is known of open files stays as it is. */
  readonly analysis = new Analysis()
  readonly #files: ReadonlyMap<string, KnownFile>
  /** Documents that are the same throughout: of open files, and of those that these use. */
  readonly #fixed: Map<string, Document>
  readonly #shared = new Map<string, Document>()
  #sharedSize = 0
  readonly #holders = new WeakMap<Section, string>()
  readonly #users = new Map<string, KnownFile[]>()
  readonly #breathe: ReturnType<typeof breather>

  constructor(files: ReadonlyMap<string, KnownFile>, fixed: Map<string, Document>, search: Search) {
    this.#files = files
    this.#fixed = fixed
    this.#breathe = breather(search)
    for (const [key, document] of fixed) this.#hold(key, document)
    for (const file of files.values())
      for (const used of file.uses) {
        const users = this.#users.get(used)
        if (users) users.push(file)
        else this.#users.set(used, [file])
      }
  }

  get known(): Iterable<KnownFile> {
    return this.#files.values()
  }

  /** The files of which this holds, one after the other with room for other work between them; without it, all. */
  async *files(holds: (known: KnownFile) => boolean = () => true): AsyncGenerator<FileAround> {
    const wanted = [...this.known].filter(holds)
    for (const [done, known] of wanted.entries()) {
      await this.#breathe(done, wanted.length)
      const file = this.#fileOf(known)
      if (file) yield { uri: known.uri, file }
    }
  }

  /** The key of the file that has a section which was found in one of these. */
  keyOf(section: Section): string | undefined {
    return this.#holders.get(section)
  }

  /** The file that has a section which was found in one of these. */
  holderOf(section: Section): FileAround | undefined {
    const known = this.#files.get(this.#holders.get(section) ?? '')
    const file = known && this.#fileOf(known)
    return file && { uri: known.uri, file }
  }

  /** A file by its URI. From here on its tree stays the same. */
  at(uri: string): FileAround | undefined {
    const known = this.#files.get(keyOf(uri))
    const document = known && this.#document(known.key)
    if (document) this.#fixed.set(known.key, document)
    const file = known && this.#fileOf(known)
    return file && { uri: known.uri, file }
  }

  rootOf(uri: string): string | undefined {
    return this.#files.get(keyOf(uri))?.root
  }

  /** Keys of these files and of all that use them, through others too. */
  usersOf(keys: Iterable<string>): ReadonlySet<string> {
    const users = new Set(keys)
    for (const key of users) for (const user of this.#users.get(key) ?? []) users.add(user.key)
    return users
  }

  /** A file with all that it uses, through others too. */
  usedBy(file: KnownFile): ReadonlySet<KnownFile> {
    const used = new Set([file])
    for (const { uses } of used)
      for (const key of uses) {
        const next = this.#files.get(key)
        if (next) used.add(next)
      }
    return used
  }

  /** One that is only used is what the last one that uses it sees. */
  #fileOf(known: KnownFile): JobFile | undefined {
    if (!known.isOnlyUsed) return this.#linked(known)
    const users = [...this.usersOf([known.key])].flatMap((key) => this.#files.get(key) ?? [])
    for (const user of users.filter(({ isOnlyUsed }) => !isOnlyUsed).reverse()) {
      const used = this.#linked(user)?.used.find(({ path }) => `${user.root}/${path}` === known.key)
      if (used) return used
    }
    return undefined
  }

  #linked({ key, root }: KnownFile): JobFile | undefined {
    const document = this.#document(key)
    const path = root === undefined ? key : key.slice(root.length + 1)
    return (
      document &&
      linkFile(path, document, (used) => (root === undefined ? undefined : this.#document(`${root}/${used}`)))
    )
  }

  #document(key: string): Document | undefined {
    const fixed = this.#fixed.get(key) ?? this.#shared.get(key)
    const known = this.#files.get(key)
    if (fixed || !known) return fixed
    const document = documentFrom(known.refusal ?? known.text)
    this.#hold(key, document)
    if ((this.#users.get(key)?.length ?? 0) > 1) this.#share(key, document)
    return document
  }

  #share(key: string, document: Document): void {
    this.#shared.set(key, document)
    this.#sharedSize += document.length
    for (const [oldest, { length }] of this.#shared) {
      if (this.#sharedSize <= cachedCharacters) break
      this.#shared.delete(oldest)
      this.#sharedSize -= length
    }
  }

  #hold(key: string, document: Document): void {
    for (const section of document.sections) this.#holders.set(section, key)
  }
}

/** All of them as they are now. */
export async function filesAround(workspace: Workspace, search: Search = {}): Promise<FilesAround> {
  // Asked seldom, and what is left out would be lost: the folders are looked through again.
  const listed = await workspace.list()
  const closed = new Map<string, KnownFile>()
  const breathe = breather(search)
  for (const [done, uri] of listed.entries()) {
    await breathe(done, listed.length)
    const read = workspace.get(uri) ? undefined : await workspace.textOf(uri)
    if (read !== undefined) closed.set(keyOf(uri), knownOf(workspace, uri, read))
  }
  const current = () => workspace.openFiles.filter(({ uri }) => !isRevision(uri))
  for (const open of current()) await workspace.whole(open)
  const files = await withUsed(workspace, closed)
  workspace.keepTexts(new Set(files.keys()))
  // From here on nothing is waited for, so that all that is open is of one moment.
  return around(workspace, { closed: files, open: current() }, search)
}

/** The same for what is asked of an open text; a refusal where that was edited while files were read. */
export async function filesAroundOpen({
  workspace,
  open,
  token,
  progress,
}: Pick<TextRequestContext<unknown>, 'workspace' | 'open' | 'token' | 'progress'>): Promise<
  FilesAround | ResponseError<void>
> {
  const search = { token, progress }
  const found = isRevision(open.uri)
    ? await itself(workspace, open, search)
    : await filesAround(workspace, search)
  return workspace.get(open.uri)?.document === open.document ? found : changedMeanwhile()
}

/** Has a question answered about all files as they are at one moment. Where an open one is edited before the answer is there, its places would
 * be wrong: a refusal then. */
export async function ofOneMoment<T>(
  { workspace }: Pick<WorkspaceRequestContext<unknown>, 'workspace'>,
  answer: () => Promise<T>,
): Promise<T | ResponseError<void>> {
  const before = workspace.openFiles
  const found = await answer()
  const isSame = before.every(({ uri, document }) => workspace.get(uri)?.document === document)
  return isSame ? found : changedMeanwhile()
}

/** A file with those it uses. */
async function itself(workspace: Workspace, open: OpenFile, search: Search): Promise<FilesAround> {
  await workspace.whole(open)
  return around(workspace, { closed: new Map(), open: [open] }, search)
}

interface GatheredFiles {
  readonly closed: ReadonlyMap<string, KnownFile>
  readonly open: readonly OpenFile[]
}

function around(workspace: Workspace, { closed, open }: GatheredFiles, search: Search): FilesAround {
  const files = new Map([...closed].filter(([, { isOnlyUsed }]) => !isOnlyUsed))
  const fixed = new Map<string, Document>()
  const used = new Map<string, KnownFile>([...closed].filter(([, { isOnlyUsed }]) => isOnlyUsed))
  for (const one of open) {
    for (const { path, document } of workspace.link(one).used) {
      const uri = workspace.uriAt(one, path)
      if (uri === undefined || workspace.get(uri)) continue
      const key = keyOf(uri)
      fixed.set(key, document)
      // As those who have it open see it, which may be older than the disk.
      const isOnlyUsed = !files.has(key)
      const known = knownOf(workspace, uri, textOf(document), isOnlyUsed)
      ;(isOnlyUsed ? used : files).set(key, known)
    }
  }
  for (const { uri, document } of open) {
    files.delete(keyOf(uri))
    used.delete(keyOf(uri))
    files.set(keyOf(uri), knownOf(workspace, uri, textOf(document)))
    fixed.set(keyOf(uri), document)
  }
  return new FilesAround(new Map([...files, ...used]), fixed, search)
}

/** With those that no folder lists and one of them uses. */
async function withUsed(
  workspace: Workspace,
  listed: ReadonlyMap<string, KnownFile>,
): Promise<ReadonlyMap<string, KnownFile>> {
  const files = new Map(listed)
  const looked = new Set<string>()
  // A map also gives what is added to it while it is gone through.
  for (const { uses, root } of files.values())
    for (const key of uses) {
      if (root === undefined || files.has(key) || looked.has(key) || !isWithin(key, root)) continue
      looked.add(key)
      const text = workspace.get(uriOf(key)) ? undefined : await workspace.textOf(uriOf(key), root)
      if (text !== undefined) files.set(key, knownOf(workspace, uriOf(key), text, true))
    }
  return files
}

function knownOf(workspace: Workspace, uri: string, read: string | Refusal, isOnlyUsed = false): KnownFile {
  const key = keyOf(uri)
  const text = typeof read === 'string' ? withoutMark(read) : ''
  const refusal = typeof read === 'string' ? undefined : read
  const uses = writtenUses(text).flatMap((path) => resolvePath(key, path) ?? [])
  return { uri, key, root: workspace.rootOf(uri), text, refusal, uses, isOnlyUsed }
}
