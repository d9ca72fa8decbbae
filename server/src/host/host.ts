import type { Refusal } from '../job/file-text.ts'

/** A file's text, or why it is not read; undefined when there is none, or when it turns out to lie outside the folder. */
export type FileRead = string | Refusal | undefined

/** Takes the URI of a folder, and why it cannot be read, in words that follow "cannot be read:". */
export type UnreadFolder = (uri: string, why: string) => void

/** What the server takes from where it runs: Node, or a browser. What a browser has to ask for comes later, as a promise. */
export interface Host {
  /** Reads a file inside the folder `root`. Both are URIs. */
  readonly read: (uri: string, root: string) => FileRead | Promise<FileRead>
  /** URIs of the job files below the folder `root`, without those in `node_modules` or in folders whose name begins with a dot. A folder that cannot
   * be read is given to `unread`. */
  readonly list: (root: string, unread: UnreadFolder) => readonly string[] | Promise<readonly string[]>
  /** Changes whenever the file does, so that its text need not be read again; undefined where there is none, or where a change may not show
   * in it. Missing where the host cannot tell. */
  readonly stamp?: (uri: string) => string | undefined
  /** Today, `YYYY-MM-DD`. */
  readonly today: () => string
  /** Where the pages of the checks stand, ending in `/`, when they stand anywhere. */
  readonly docs?: string
}
