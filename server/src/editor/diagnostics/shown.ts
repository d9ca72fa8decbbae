import { type Diagnostic, type Disposable, RAL } from 'vscode-languageserver'
import { keyOf } from '../../host/uri.ts'
import type { Change, OpenFile } from '../workspace/workspace.ts'
import { lineOf, shownNow } from './held-back.ts'

interface Writing {
  /** The line being written; undefined once its findings may be shown. */
  line: number | undefined
  shown: readonly Diagnostic[]
  timer?: Disposable
}

interface ShownOptions {
  /** Everything found in a file now. */
  readonly find: (open: OpenFile) => readonly Diagnostic[]
  /** Milliseconds that what is new on the line being written waits. */
  readonly delay: () => number
  /** Told when more of a file may be shown than was. */
  readonly more: (open: OpenFile) => void
}

/** What is found in files, as far as it may be shown now. */
export class Shown {
  readonly #parts: ShownOptions
  readonly #writing = new Map<string, Writing>()

  constructor(parts: ShownOptions) {
    this.#parts = parts
  }

  edited(uri: string, changes: readonly Change[]): void {
    const writing = this.#writing.get(keyOf(uri))
    if (!writing) return
    writing.timer?.dispose()
    writing.line = this.#parts.delay() > 0 ? lineOf(changes.at(-1)) : undefined
  }

  closed(uri: string): void {
    this.#writing.get(keyOf(uri))?.timer?.dispose()
    this.#writing.delete(keyOf(uri))
  }

  /** What may be shown of a file that is open. */
  of(open: OpenFile): readonly Diagnostic[] {
    const found = this.#parts.find(open)
    const key = keyOf(open.uri)
    const writing = this.#writing.get(key) ?? { line: undefined, shown: [] }
    this.#writing.set(key, writing)
    writing.timer?.dispose()
    writing.shown = writing.line === undefined ? found : shownNow(writing.shown, found, writing.line)
    if (writing.shown.length < found.length)
      writing.timer = RAL().timer.setTimeout(() => {
        writing.line = undefined
        this.#parts.more(open)
      }, this.#parts.delay())
    return writing.shown
  }
}
