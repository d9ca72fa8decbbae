import type { FileRead, Host } from '../../host/host.ts'
import { uriOf } from '../../host/uri.ts'
import { type Document, documentFrom, textOf } from '../../job/document.ts'
import { withoutMark } from '../../job/file-text.ts'

interface CachedDocument {
  readonly root: string
  readonly document: Document | undefined
  /** The reading that is on its way. */
  readonly reading?: Promise<void>
}

/** Texts of files that are not open, each read once. A text that comes later is told of when it is there. */
export class Disk {
  readonly #read: Host['read']
  readonly #came: (key: string) => void
  readonly #kept = new Map<string, CachedDocument>()

  constructor(read: Host['read'], came: (key: string) => void) {
    this.#read = read
    this.#came = came
  }

  document(key: string, root: string): Document | undefined {
    if (!this.#kept.has(key)) this.#look(key, root)
    return this.#kept.get(key)?.document
  }

  get keys(): Iterable<string> {
    return this.#kept.keys()
  }

  reading(key: string): Promise<void> | undefined {
    return this.#kept.get(key)?.reading
  }

  /** Looks again at what was read before: at these files, or at all. */
  refresh(keys: Iterable<string> = [...this.#kept.keys()]): void {
    for (const key of keys) {
      const kept = this.#kept.get(key)
      if (kept?.document) this.#look(key, kept.root)
      else this.#kept.delete(key)
    }
  }

  #look(key: string, root: string): void {
    const read = this.#read(uriOf(key), uriOf(root))
    if (!(read instanceof Promise)) {
      this.#put(key, root, read)
      return
    }
    const reading = read
      .catch(() => undefined)
      .then((late) => {
        if (this.#kept.get(key)?.reading !== reading) return
        this.#put(key, root, late)
        this.#came(key)
      })
    this.#kept.set(key, { root, document: this.#kept.get(key)?.document, reading })
  }

  #put(key: string, root: string, read: FileRead): void {
    const before = this.#kept.get(key)?.document
    const same = before && !before.refusal && typeof read === 'string' && withoutMark(read) === textOf(before)
    const document = read === undefined ? undefined : same ? before : documentFrom(read)
    this.#kept.set(key, { root, document })
  }
}
