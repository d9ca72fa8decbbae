import type { FileRead, Host } from '../../host/host.ts'
import { keyOf } from '../../host/uri.ts'
import type { Refusal } from '../../job/file-text.ts'

interface CachedText {
  /** What told that the file is still the same. */
  readonly stamp: string
  readonly text: string | Refusal
}

/** Characters that are kept in all; what does not fit is read each time. */
const cachedCharacters = 32 * 2 ** 20

/** A host that cannot tell whether a file has changed is believed to give notice of it. */
const untilNotice = 'until notice'

const sizeOf = ({ text }: CachedText): number => (typeof text === 'string' ? text.length : 0)

/** Texts of files that nobody has open, read once as long as they stay the same. */
export class FileTexts {
  readonly #host: Pick<Host, 'read' | 'stamp'>
  readonly #kept = new Map<string, CachedText>()
  #size = 0
  #notices = 0
  /** Whether the editor gives notice of every change on disk. */
  isTold = false

  constructor(host: Pick<Host, 'read' | 'stamp'>) {
    this.#host = host
  }

  /** As the file is now, inside the folder `root`. */
  read(uri: string, root: string): FileRead | Promise<FileRead> {
    const key = keyOf(uri)
    // Before it is read, so that a change meanwhile shows the next time.
    const stamp = this.#host.stamp ? this.#host.stamp(uri) : this.isTold ? untilNotice : undefined
    const kept = this.#kept.get(key)
    if (kept && kept.stamp === stamp) return kept.text
    this.#forget(key)
    const notices = this.#notices
    const take = (text: FileRead) => {
      if (text !== undefined && stamp !== undefined && notices === this.#notices)
        this.#keep(key, { stamp, text })
      return text
    }
    const text = this.#host.read(uri, root)
    return text instanceof Promise ? text.then(take) : take(text)
  }

  /** To be told which files may be others now, by their keys. */
  changed(keys: Iterable<string>): void {
    this.#notices += 1
    for (const key of keys) this.#forget(key)
  }

  /** Lets go of all but these. */
  keepOnly(keys: ReadonlySet<string>): void {
    for (const key of [...this.#kept.keys()]) if (!keys.has(key)) this.#forget(key)
  }

  #keep(key: string, kept: CachedText): void {
    this.#forget(key)
    if (this.#size + sizeOf(kept) > cachedCharacters) return
    this.#kept.set(key, kept)
    this.#size += sizeOf(kept)
  }

  #forget(key: string): void {
    const kept = this.#kept.get(key)
    if (kept) this.#size -= sizeOf(kept)
    this.#kept.delete(key)
  }
}
