import { keyOf } from '../../host/uri.ts'
import { whenQuiet } from '../transport/quiet.ts'
import { overlap } from './overlap.ts'
import type { OpenFile, Workspace } from './workspace.ts'

/** Files an editor shows results of that it asked for itself. It is told once when they may have changed, and is followed again when it asks
 * again. */
export class Followed {
  readonly #workspace: Workspace
  /** By URI, the keys of all files that decide the result. */
  readonly #followed = new Map<string, ReadonlySet<string>>()
  readonly #due = new Set<string>()
  readonly #ring: () => void

  constructor(workspace: Workspace, notify: (uris: readonly string[]) => void) {
    this.#workspace = workspace
    this.#ring = whenQuiet(() => {
      const uris = [...this.#due]
      this.#due.clear()
      notify(uris)
    })
  }

  /** `open`: the file, where there is one. */
  follow(uri: string, open: OpenFile | undefined): void {
    this.#followed.set(uri, open ? this.#workspace.keysOf(open) : new Set([keyOf(uri)]))
  }

  /** To be told when files are others now, or when any may be. */
  changed(changed?: readonly string[]): void {
    const all = changed && new Set(changed.map(keyOf))
    for (const [uri, keys] of this.#followed) {
      if (all && !overlap(all, keys)) continue
      this.#followed.delete(uri)
      this.#due.add(uri)
      this.#ring()
    }
  }
}
